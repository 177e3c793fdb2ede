import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';

/** The most that the page may take on its way to somebody, with engine, shelf and rules inside it. */
export const mostPage_bytes = 350_000;

/** What a page takes when it is sent as servers send it. */
export const sentAs_bytes = (file: string): number => gzipSync(readFileSync(file), { level: 9 }).length;
