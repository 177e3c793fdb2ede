import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';

/** Those of some faults that the compiler refuses, each tried in a copy of the sources. */
export function refusedByCompiler(root, faults) {
  const copy = mkdtempSync(join(tmpdir(), 'faults-'));
  try {
    for (const name of ['src', 'tsconfig.json', 'package.json'])
      cpSync(join(root, name), join(copy, name), { recursive: true });
    symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));
    const compiles = (chosen) => {
      for (const { file, start, end, text } of chosen) {
        const source = readFileSync(file, 'utf8');
        writeFileSync(join(copy, relative(root, file)), source.slice(0, start) + text + source.slice(end));
      }
      const { status } = spawnSync(
        process.execPath,
        [join(root, 'node_modules', 'typescript', 'bin', 'tsc'), '-p', copy, '--noEmit'],
        { stdio: 'ignore' },
      );
      for (const { file } of chosen) writeFileSync(join(copy, relative(root, file)), readFileSync(file, 'utf8'));
      return status === 0;
    };
    if (!compiles([])) throw new Error('The sources do not compile without a fault.');
    /** Halves a list until only what is refused is left; nearly always nothing is. */
    const refused = (chosen) => {
      if (chosen.length === 0 || compiles(chosen)) return [];
      if (chosen.length === 1) return chosen;
      const half = Math.ceil(chosen.length / 2);
      return [...refused(chosen.slice(0, half)), ...refused(chosen.slice(half))];
    };
    const rounds = [];
    for (const fault of faults) {
      const round = rounds.find((one) => one.every(({ file }) => file !== fault.file));
      if (round === undefined) rounds.push([fault]);
      else round.push(fault);
    }
    return rounds.flatMap(refused);
  } finally {
    rmSync(copy, { recursive: true });
  }
}
