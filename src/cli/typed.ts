/** A file name as one types it in a shell: bare where it is plain, else in single quotes. */
export const typed = (name: string): string =>
  /^[\w./-]+$/u.test(name) && !name.startsWith('-') ? name : `'${name.replaceAll("'", "'\\''")}'`;
