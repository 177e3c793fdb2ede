import type { Finding } from '../findings/finding.js';
import { titleOfId } from '../findings/title.js';
import { toolLimits, type ToolLimit } from '../order-of-work/tool-limits.js';
import type { ToolsAtHand } from '../order-of-work/tools-at-hand.js';
import type { Model } from '../model/model.js';

/** What the workshop makes hard in a plan, as findings beside those of the rules: each a caution with a way round. */
export function toolFindings(model: Model, tools: ToolsAtHand): readonly Finding<ToolLimit['fact']>[] {
  return toolLimits(model, tools).map(({ id, fact, found, way }): Finding<ToolLimit['fact']> => ({
    rule: `tools/${id}`,
    title: titleOfId(id),
    about: 'frame',
    verdict: 'caution',
    fact,
    actual: null,
    limit: null,
    unit: '',
    used: null,
    say: found,
    do: [way],
    cautions: [],
    source: 'practice',
  }));
}
