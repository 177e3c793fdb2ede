import { formatQuantity } from '../../base/units-format.js';
import { inventedOf } from '../../cost/supplies.js';
import type { Audit } from '../audit-view.js';
import { userText } from '../clean-text.js';

type Priced = Pick<Audit, 'shelf' | 'supplies'>;

/** An amount in a currency: `41.20 EUR`; `unknown` when it is. */
export const money = (amount: number | null, currency: string): string =>
  formatQuantity(amount, 'cost', 'metric', userText(currency, 8));

/** The same in the shelf's currency. */
export const moneyInWords = ({ shelf }: Pick<Priced, 'shelf'>, amount: number | null): string =>
  money(amount, shelf.currency);

/** What everything costs, and whether its prices are only for show. */
export const costInWords = (priced: Priced, cost: number | null): string =>
  `${moneyInWords(priced, cost)}${cost === null ? '' : { none: '', some: ' (some prices invented)', all: ' (invented prices)' }[inventedOf(priced.supplies)]}`;
