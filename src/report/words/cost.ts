import { formatQuantity } from '../../base/units-format.js';
import type { Audit } from '../audit-view.js';
import { userText } from '../clean-text.js';

type Priced = Pick<Audit, 'plan' | 'shelf'>;

/** An amount in the shelf's currency: `41.20 EUR`; `unknown` when it is. */
export const moneyInWords = ({ shelf, plan }: Priced, amount: number | null): string => (amount === null ? 'unknown' : `${formatQuantity(amount, 'cost', plan.units)} ${userText(shelf.currency, 8)}`);

/** What everything costs, and whether the prices are only for show. */
export const costInWords = (priced: Priced, cost: number | null): string => `${moneyInWords(priced, cost)}${cost !== null && priced.shelf.demo_prices ? ' (demo prices)' : ''}`;
