// Stands in the bundled command for the way from the address of a module to its file: the start gives it the file as it is.
export const fileURLToPath = (file) => file;
