import { inflateSync } from 'node:zlib';

/** One sheet of a printed page: its size in points, and how many lines of text stand on it, those of drawings among them. */
export interface PrintedSheet {
  readonly size: string;
  readonly lines: number;
}

/** The sheets of a PDF as this browser writes it: objects in plain sight, the marks of a sheet deflated. */
export function sheetsIn(pdf: Buffer): readonly PrintedSheet[] {
  const objects = new Map([...pdf.toString('latin1').matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/gu)].map(([, name, body]) => [name, body ?? '']));
  return [...objects.values()].filter((body) => /\/Type ?\/Page\b/u.test(body)).map((body) => {
    const [, width, height] = /\/MediaBox ?\[0 0 ([\d.]+) ([\d.]+)\]/u.exec(body) ?? [];
    return { size: `${Math.round(Number(width))} x ${Math.round(Number(height))}`, lines: linesOf(objects.get(/\/Contents (\d+) 0 R/u.exec(body)?.[1]) ?? '') };
  });
}

/** How many heights letters stand at. */
function linesOf(marks: string): number {
  const [head, tail] = [marks.slice(0, marks.indexOf('stream\n')), marks.slice(marks.indexOf('stream\n') + 7, marks.lastIndexOf('\nendstream'))];
  if (!head.includes('/FlateDecode')) throw new Error('the marks of a sheet are not written as expected');
  return new Set([...inflateSync(Buffer.from(tail, 'latin1')).toString('latin1').matchAll(/ (-?[\d.]+) Tm\n/gu)].map(([, y]) => Math.round(Number(y)))).size;
}
