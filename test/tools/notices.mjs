// Gathers the licence of every package that went into a bundle: their terms ask that the notice travels with the code.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Folders of the packages among the inputs of an esbuild metafile, each once, sorted. */
function packageFolders(metafile) {
  const folders = Object.keys(metafile.inputs).flatMap((input) => {
    const found = /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(input);
    return found === null ? [] : [found[1]];
  });
  return [...new Set(folders)].sort();
}

/** The notices as one text. Throws where a package names no licence, so that none is bundled unseen. */
export function noticesOf(metafile, more = []) {
  const parts = [...new Set([...packageFolders(metafile), ...more])].map((folder) => {
    const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    const file = readdirSync(folder).find((entry) => /^(licen[cs]e|copying)(\.|-|$)/i.test(entry));
    if (typeof license !== 'string') throw new Error(`${name} names no licence`);
    if (/\bA?GPL/.test(license)) throw new Error(`${name} is under ${license}: no library under the GPL`);
    const text = file === undefined ? `(The package brings no text of its licence, ${license}.)` : readFileSync(join(folder, file), 'utf8').trim();
    const notice = existsSync(join(folder, 'NOTICE')) ? `\n\n${readFileSync(join(folder, 'NOTICE'), 'utf8').trim()}` : '';
    return `${name} ${version} (${license})\n\n${text}${notice}\n`;
  });
  return `The command holds code of these packages, under their own licences.\n\n${parts.join('\n----\n\n')}`;
}
