import { usualLimits } from '../../index.js';
import type { NamedText } from '../engine/protocol.js';
import { told } from './plan.js';
import { fileName } from './share.js';

/** Largest file that is read, bytes: no letter takes more than three of them. */
const largest = 3 * usualLimits.size;

/** Whether no reader would take so long a text; then it is told that it stays out. */
export function leftOut(text: string, how: 'pasted' | 'opened'): boolean {
  const long = text.length > usualLimits.size;
  if (long) told.value = `What you ${how} is far too long for a plan, so it was left out.`;
  return long;
}

/** The part of the browser's file picker used here; not every browser has one. */
interface Handle {
  readonly name: string;
  createWritable(): Promise<{ write(text: string): Promise<void>; close(): Promise<void> }>;
}
type Picker = (options: {
  readonly suggestedName: string;
  readonly types: readonly {
    readonly description: string;
    readonly accept: Readonly<Record<string, readonly string[]>>;
  }[];
}) => Promise<Handle>;

/**
 * Saves a text: where one picks, when the browser can ask; as a download otherwise. Null when one thought better of it.
 */
export async function saveText({
  text,
  file,
}: NamedText): Promise<{ readonly how: 'written' | 'downloaded'; readonly name: string } | null> {
  const name = fileName(file);
  const pick = (globalThis as unknown as { showSaveFilePicker?: Picker }).showSaveFilePicker;
  if (pick !== undefined) {
    try {
      const handle = await pick({
        suggestedName: name,
        types: [{ description: 'Plan', accept: { 'text/yaml': ['.yaml', '.yml'] } }],
      });
      const file = await handle.createWritable();
      await file.write(text);
      await file.close();
      return { how: 'written', name: handle.name };
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return null;
    }
  }
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'text/yaml' }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  return { how: 'downloaded', name };
}

/** Files as texts, in the order of their names; one that is too large comes as blanks, more than any reader takes. */
export async function readFiles(files: readonly File[]): Promise<readonly NamedText[]> {
  const read = await Promise.all(
    files
      .filter(({ name }) => /\.ya?ml$/iu.test(name))
      .map(async (file) => ({
        file: fileName(file.name),
        text: file.size > largest ? ' '.repeat(usualLimits.size + 1) : await file.text(),
      })),
  );
  return read.sort((a, b) => (a.file < b.file ? -1 : 1));
}

/**
 * The part of a dropped item used here; not every browser has it. Chromium lets a page from the disk look into a folder
 * in no other way.
 */
interface HandledItem {
  getAsFileSystemHandle?(): Promise<FileSystemHandle | null>;
}

/**
 * Every file that was dropped, those inside a folder too; null where the browser does not let the page look into it.
 */
export async function droppedFiles(transfer: DataTransfer): Promise<readonly File[] | null> {
  // What was dropped can be asked for only at once.
  const asked = [...transfer.items]
    .filter(({ kind }) => kind === 'file')
    .map((item) => ({ handle: (item as HandledItem).getAsFileSystemHandle?.(), entry: item.webkitGetAsEntry() }));
  try {
    return (
      await Promise.all(
        asked.map(async ({ handle, entry }) => {
          const held = await handle;
          return held != null ? heldFiles(held) : entry === null ? [] : filesIn(entry);
        }),
      )
    ).flat();
  } catch (error) {
    if (error instanceof DOMException) return null;
    throw error;
  }
}

/** The files of a folder that was chosen, without those of folders inside it. */
export const filesOfFolder = (chosen: readonly File[]): readonly File[] =>
  chosen.filter(({ webkitRelativePath }) => webkitRelativePath.split('/').length <= 2);

async function heldFiles(handle: FileSystemHandle): Promise<readonly File[]> {
  if (handle.kind === 'file') return [await (handle as FileSystemFileHandle).getFile()];
  const found: File[] = [];
  for await (const one of (handle as FileSystemDirectoryHandle).values())
    if (one.kind === 'file') found.push(await one.getFile());
  return found;
}

async function filesIn(entry: FileSystemEntry): Promise<readonly File[]> {
  if (entry.isFile)
    return [await new Promise<File>((done, failed) => (entry as FileSystemFileEntry).file(done, failed))];
  const reader = (entry as FileSystemDirectoryEntry).createReader();
  const found: FileSystemEntry[] = [];
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((done, failed) => reader.readEntries(done, failed));
    if (some.length === 0) break;
    found.push(...some);
  }
  return (await Promise.all(found.filter(({ isFile }) => isFile).map(filesIn))).flat();
}
