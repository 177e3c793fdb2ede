/** What a name must not do to a page: start a script, fetch, link, turn the reading order round, push the page wide, close a tag. */
const tricks = {
  script: '<script>document.title="broken out"</script>',
  image: '<img src="http://example.com/seen.png" onerror="alert(1)">',
  drawing: '</text></svg><iframe src="http://example.com"></iframe>',
  style: '</style><style>@import "http://example.com/x.css";*{display:none}</style>',
  link: '[tap here](http://example.com) http://example.com www.example.com',
  handler: '"><b onmouseover=alert(1)> javascript:alert(1)',
} as const;

/** Marks that turn the reading order without being letters. */
const turners = '\u200F\u061C';
/** A word of Hebrew: letters that run from right to left by themselves. */
const rightToLeft = 'מסגרת';

const unbroken = (length: number): string => 'Wandbespannungskeilrahmenleiste'.repeat(20).slice(0, length);

/** A text filled up to exactly `length` characters with one unbroken word. */
const filled = (start: string, length: number): string => [...`${start} ${unbroken(length)}`].slice(0, length).join('');

/** The longest stock key a shelf may have; it has no place to break but its dots. */
const longKey = `K${'w'.repeat(59)}`;

const plan = {
  plan: 1,
  name: filled(`${tricks.script}${turners}${rightToLeft}`, 200),
  face: { width: '1200 mm', height: '900 mm' },
  bars: { stock: longKey, lay: 'edge', plies: 2, bond: 'glue+screws' },
  crossbars: [{ runs: 'upright', stock: longKey, lay: 'flat' }],
  corners: { glue: 'hostile-glue', nails: { use: 'brad-18ga-25', each: 1 } },
  'ply-screws': { use: 'hostile-screw', every: '200 mm' },
  cloth: { use: 'hostile-cloth' },
  spend: { limit: 5 },
};

const shelf = {
  shelf: 1,
  name: filled(tricks.style, 200),
  prices: { currency: '<b>EUR</b>' },
  lumber: { [longKey]: { nominal: filled(tricks.image, 40), size: '19 x 38 mm', lengths: [{ length: '2400 mm', price: 3 }, { length: '3000 mm', price: 4 }] } },
  screws: { 'hostile-screw': { name: filled(tricks.drawing, 100), shank: '3.5 mm', root: '2.3 mm', head: '6.5 mm', length: '32 mm', price: 0.1 } },
  glues: {
    'hostile-glue': {
      name: filled(tricks.handler, 100), spread: '200 g/m2', density: '1.1 g/ml', open: '5 min', clamp: '60 min', handle: '3 h', cure: '24 h', coldest: '10 C', 'price-per-100ml': 1.5,
    },
  },
  cloths: { 'hostile-cloth': { name: filled(`${tricks.image}${rightToLeft}`, 100), mass: '340 g/m2', roll: '2100 mm', 'price-per-m': 9, stiffness: '50 kN/m', shrinkage: '2 %' } },
};

const ruleset = {
  ruleset: 1,
  name: filled(`${rightToLeft} ${tricks.link}`, 100),
  'builds-on': ['baseline'],
  rules: [
    {
      id: 'hostile/words',
      each: 'frame',
      require: { fact: 'frame.weight_kg', 'at-most': '1 g' },
      otherwise: 'stop',
      say: filled(`${tricks.image} ${tricks.link}`, 300),
      do: [filled(tricks.drawing, 200), `${turners}${rightToLeft} ${tricks.handler}`],
      source: 'practice',
      examples: { clear: '0.5 g', fails: '1 kg' },
    },
  ],
};

/** JSON is YAML, so these are files as a person could hand them over. */
export const hostilePlan = JSON.stringify(plan);
export const hostileShelf = JSON.stringify(shelf);
export const hostileRuleset = JSON.stringify(ruleset);
