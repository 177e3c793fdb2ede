/**
 * Why nothing was written: a sentence with the path and what to do. The command shows it and ends with an input error.
 */
export class CannotWrite extends Error {}

/** The refusal to write over a file that somebody may need. */
export function thereAlready(file: string): CannotWrite {
  return new CannotWrite(`${file} is there already and stays as it is. Nothing was written; choose another name.`);
}

const reasons: Readonly<Record<string, string>> = {
  EACCES: 'you may not write there',
  EPERM: 'you may not write there',
  EROFS: 'it can only be read',
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is full',
  ENAMETOOLONG: 'its name is too long',
  ENOENT: 'nothing can be made there',
  EISDIR: 'it is a folder',
  EFBIG: 'a file may not grow as large as that',
};

/** The sentence for a place that cannot be written to. */
export function cannot(path: string, error: unknown): CannotWrite {
  const code = (error as NodeJS.ErrnoException).code ?? 'unknown reason';
  return new CannotWrite(`${path} cannot be written to: ${reasons[code] ?? code}. Choose another folder with --out.`);
}
