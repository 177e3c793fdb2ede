import type { Source } from '../../base/sources.js';
import { catalogueByPath } from '../../facts/catalogue.js';
import { measuredInWords } from '../../shelf/measured-words.js';
import { userText } from '../clean-text.js';
import { bullets, heading, paragraph, type Block, type Cell } from '../tree.js';
import type { Section, Telling } from '../telling.js';
import { appliedInWords } from '../words/applied.js';
import { samplingInWords } from '../words/sampling.js';

/** Part 11: what was assumed, what is left out, which rules did not speak, and where the numbers come from. */
export function sourcesSection({ audit }: Telling): Section {
  const own = measuredInWords(audit.shelf.measured);
  const blocks: Block[] = [
    heading(3, 'Assumed, because the plan does not say'),
    audit.assumed.length === 0
      ? paragraph('Nothing: the plan says everything itself.')
      : bullets(assumed(audit.assumed)),
    heading(3, 'Left out of the computation'),
    bullets(audit.left_out),
    ...switchedOff(audit.applied.switched_off),
    ...silent(audit.silent.filter(({ rule }) => !audit.findings.some((finding) => finding.rule === rule))),
    heading(3, 'Where the numbers come from'),
    paragraph(
      `${sourcesUsed(
        audit.findings.map((f) => f.source),
        audit.facts.map((f) => catalogueByPath.get(f.path)?.source ?? ''),
        audit.sources,
      ).join('. ')}.`,
    ),
    ...(own === ''
      ? []
      : [
          paragraph(
            `Measured by this studio: ${userText(own, 600)}. All other numbers of the shelf are the sources’ or proposals.`,
          ),
        ]),
    paragraph(
      `Ruleset ${appliedInWords(audit.applied)}, shelf “${userText(audit.shelf.name)}”. ${samplingInWords(audit)}`,
    ),
  ];
  return { title: 'What this rests on', blocks, pictures: [] };
}

/** One line for each part of the plan, so that a long list stays short on paper. */
function assumed(list: readonly { readonly path: string; readonly value: string }[]): readonly Cell[] {
  const byPart = new Map<string, string[]>();
  for (const { path, value } of list) {
    const [part = '', ...rest] = path
      .replace(/^crossbars\[(\d+)\]/u, (_, n: string) => `crossbar ${Number(n) + 1}`)
      .split('.');
    const name = rest.length === 0 ? '' : userText(rest.join(' '), 60);
    byPart.set(part, [...(byPart.get(part) ?? []), assumption(name, value)]);
  }
  return [...byPart].map(([part, values]) => `${userText(part, 40)}: ${values.join('; ')}.`);
}

/** What was assumed of one thing, its name told once: `no lip`, `two coats`, `lay flat`. */
function assumption(name: string, value: string): string {
  if (name !== '' && /^0 (?:mm|in)$/u.test(value)) return `no ${name}`;
  const named = name === '' || value.split(' ').some((word) => stem(word) === stem(name));
  return `${named ? '' : `${name} `}${userText(value, 120)}`;
}

/** A noun without its plural: `ply` and `plies`, `coat` and `coats` are one. */
const stem = (noun: string): string => noun.toLowerCase().replace(/ies$/u, 'y').replace(/s$/u, '');

function switchedOff(list: readonly { readonly rule: string; readonly reason: string }[]): readonly Block[] {
  if (list.length === 0) return [];
  return [
    heading(3, 'Rules switched off by the ruleset'),
    bullets(list.map(({ rule, reason }) => `${userText(rule, 60)}: ${reason}`)),
  ];
}

/** One line per rule, with the first reason it gave. */
function silent(list: readonly { readonly rule: string; readonly why_read: string }[]): readonly Block[] {
  if (list.length === 0) return [];
  const byRule = new Map<string, string>();
  for (const { rule, why_read } of list) if (!byRule.has(rule)) byRule.set(rule, why_read);
  return [
    heading(3, 'Rules that did not apply'),
    bullets([...byRule].map(([rule, why]): Cell => `${userText(rule, 60)}: ${why}`)),
  ];
}

const standing: Readonly<Record<Source['status'], string>> = {
  seen: '',
  memory: ' (recalled, not checked against the book)',
  practice: '',
  proposal: '',
  measured: '',
  derived: '',
};

function sourcesUsed(
  ofFindings: readonly string[],
  ofFacts: readonly string[],
  known: readonly Source[],
): readonly string[] {
  const byKey = new Map(known.map((source) => [source.key, source]));
  const keys = [...new Set([...ofFindings, ...ofFacts])].filter((key) => key !== '').sort();
  return keys.map((key) => {
    const source = byKey.get(key);
    if (source === undefined) return userText(key, 60);
    const edition = [source.edition, source.year === null ? '' : String(source.year)]
      .filter((part) => part !== '')
      .join(', ');
    return `${source.title}${edition === '' ? '' : `, ${edition}`}${standing[source.status]}`;
  });
}
