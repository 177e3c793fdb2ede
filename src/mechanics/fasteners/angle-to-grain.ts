/**
 * Strength at an angle to the grain: N = P Q/(P sinⁿα + Q cosⁿα), from the strength along (`P`) and across (`Q`) it, in
 * any one unit.
 * `n` is 2 for bearing and dowels; 1.5 to 2.5 for other strengths.
 * Source: wood-handbook-2010 eq. 5-1 (n = 2 as in nds-2018 Appendix J; other n recalled).
 */
export function atAngleToGrain(P: number, Q: number, angle_deg: number, n = 2): number {
  const alpha = (angle_deg * Math.PI) / 180;
  return (P * Q) / (P * Math.abs(Math.sin(alpha)) ** n + Q * Math.abs(Math.cos(alpha)) ** n);
}
