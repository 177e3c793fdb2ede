import { expect, it } from 'vitest';
import { frontView } from '../../src/report/drawings/front-view.js';

// An alarm, not a proof: it only tells that the drawing changed. Look at the picture before accepting a new one.
it('front view of an oblong with a crossbar and braces looks as it did', async () => {
  const { svg } = frontView({
    units: 'inch', width_mm: 898.525, height_mm: 723.9, bar_w_mm: { top: 38.1, bottom: 38.1, left: 38.1, right: 38.1 }, cut: 'mitre', seams_mm: [],
    crossbars: [{ name: 'crossbar-1', runs: 'upright', at: 0.5, w_mm: 19.05 }],
    braces: (['top-left', 'top-right', 'bottom-left', 'bottom-right'] as const).map((corner) => ({ corner, kind: 'timber', leg_mm: 203.2, w_mm: 38.1 })),
  });
  await expect(svg).toMatchFileSnapshot('./front-view.golden.svg');
});
