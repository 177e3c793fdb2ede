import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/** SHA-256 of a text in UTF-8, as 64 hexadecimal digits; the same on every machine and in a browser. */
export const digest = (text: string): string => bytesToHex(sha256(utf8ToBytes(text)));

/** The first eight digits of the digest: enough to see on paper whether two texts are the same. */
export const fingerprint = (text: string): string => digest(text).slice(0, 8);
