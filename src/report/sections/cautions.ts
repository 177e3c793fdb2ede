import { cautions, cautionsById } from '../../findings/cautions.js';
import type { Audit } from '../audit-view.js';
import { userText } from '../clean-text.js';
import { bullets, paragraph, strong } from '../tree.js';
import type { Section, Telling } from '../telling.js';

/** Said in every report, whatever the plan. */
export const waitForProfessional =
  'Follow local codes and ask a licensed professional where people can be hurt: overhead, in public, or with very heavy work.';

/** What to mind while making this frame: the cautions that the plan's steps and findings call for. */
export function cautionsFor(audit: Pick<Audit, 'findings' | 'sheets'>): readonly string[] {
  const called = new Set([
    ...audit.sheets.work.flatMap((step) => step.cautions),
    ...audit.findings.flatMap((finding) => finding.cautions),
  ]);
  const known = cautions.filter(({ id }) => called.has(id)).map(({ text }) => text);
  return [
    ...known,
    ...[...called]
      .filter((id) => !cautionsById.has(id))
      .sort()
      .map((id) => userText(id.replaceAll('-', ' '))),
  ];
}

/** Part 10: the cautions that this plan's steps and findings call for. */
export const cautionsSection = ({ audit }: Telling): Section => ({
  title: 'Work safely',
  blocks: [bullets(cautionsFor(audit)), paragraph(strong(waitForProfessional))],
  pictures: [],
});
