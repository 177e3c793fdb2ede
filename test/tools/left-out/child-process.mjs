// Stands in the bundled command for Node's starting of other programs, which Commander loads for subcommands that are
// programs of their own. There are none.
export const spawn = () => {
  throw new Error('No subcommand is a program of its own.');
};
