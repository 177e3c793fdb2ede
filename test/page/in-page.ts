/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
// What runs inside the page. Each function is sent there by itself, so it may use nothing from outside it.

/** Elements that reach past the right edge of the page or of their scroller's parent, and whether the page itself scrolls sideways. */
export function tooWide(): { readonly page_px: number; readonly over: readonly string[] } {
  const root = document.documentElement;
  const over: string[] = [];
  for (const element of document.querySelectorAll('body *')) {
    if (!(element instanceof HTMLElement) && element.tagName !== 'svg') continue;
    const scroller = element.closest('.wide, pre');
    if (scroller !== null && scroller !== element && getComputedStyle(scroller).overflowX === 'auto') continue;
    const { left, right, width } = element.getBoundingClientRect();
    if (width > 0 && (right > root.clientWidth + 1 || left < -1)) over.push(`${element.tagName} ${Math.round(left)}..${Math.round(right)} ${(element.textContent ?? '').trim().slice(0, 40)}`);
  }
  return { page_px: root.scrollWidth - root.clientWidth, over };
}

/** Tags and attributes that could run, fetch or lead away. */
export function couldAct(): readonly string[] {
  const page = 'HTML HEAD META TITLE STYLE BODY HEADER NAV MAIN SECTION DETAILS SUMMARY FOOTER H1 H2 H3 P STRONG EM UL OL LI A DIV TABLE THEAD TBODY TR TH TD BLOCKQUOTE BR FIGURE'.split(' ');
  const drawn = 'svg g title desc path rect circle ellipse line polyline polygon text tspan defs pattern clipPath marker'.split(' ');
  const bad: string[] = [];
  for (const element of document.querySelectorAll('*')) {
    if (!(element instanceof SVGElement ? drawn : page).includes(element.tagName)) bad.push(`<${element.tagName}>`);
    for (const { name, value } of element.attributes) {
      if (/^on/iu.test(name)) bad.push(`${element.tagName} ${name}`);
      if (/^(?:src|href|xlink:href|action|style)$/iu.test(name) && !/^#[a-z-]+$/u.test(value)) bad.push(`${element.tagName} ${name}=${value}`);
    }
  }
  return bad;
}

/** Puts a script and a picture from elsewhere into the page, as if sanitising had failed. */
export function breakIn(): void {
  const script = document.createElement('script');
  script.textContent = 'document.title = "broken out"';
  const image = document.createElement('img');
  image.src = 'http://127.0.0.1:9/x.png';
  document.body.append(script, image);
}

/** One run of text with the colours it is seen in, as CSS writes them. */
export interface SeenText {
  readonly words: string;
  readonly ink: string;
  readonly ground: string;
  readonly drawn: boolean;
  /** Size of its letters as shown, in CSS pixels. */
  readonly size_px: number;
}

/** Every text that is shown, with its own colour and the colour right behind it; in a drawing the shape painted last under it counts. */
export function seenTexts(): readonly SeenText[] {
  const seen: SeenText[] = [];
  const solid = (colour: string): boolean => colour !== 'none' && colour !== 'transparent' && !/^rgba\(.*, 0\)$/u.test(colour) && !colour.startsWith('url');
  const behind = (element: Element): string => {
    for (let at: Element | null = element; at !== null; at = at.parentElement) {
      const { backgroundColor } = getComputedStyle(at);
      if (solid(backgroundColor)) return backgroundColor;
    }
    return 'rgb(255, 255, 255)';
  };
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const element = node.parentElement;
    const words = (node.nodeValue ?? '').trim();
    if (element === null || words === '' || element.closest('svg') !== null || element.getClientRects().length === 0) continue;
    const style = getComputedStyle(element);
    seen.push({ words, ink: style.color, ground: behind(element), drawn: false, size_px: Number.parseFloat(style.fontSize) });
  }
  for (const svg of document.querySelectorAll('svg')) {
    if (svg.getClientRects().length === 0) continue;
    const scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
    const shapes = [...svg.querySelectorAll<SVGGeometryElement>('rect, path, polygon, circle, ellipse')].filter((shape) => solid(getComputedStyle(shape).fill));
    for (const text of svg.querySelectorAll('text')) {
      const style = getComputedStyle(text);
      const toSheet = svg.getScreenCTM()?.inverse().multiply(text.getScreenCTM() as DOMMatrix) ?? new DOMMatrix();
      const box = text.getBBox();
      const grounds = new Set([0.05, 0.5, 0.95].map((share) => {
        const at = new DOMPoint(box.x + share * box.width, box.y + box.height / 2).matrixTransform(toSheet);
        const under = shapes.filter((shape) => shape.isPointInFill(at)).at(-1);
        return under === undefined ? behind(svg) : getComputedStyle(under).fill;
      }));
      for (const ground of grounds) seen.push({ words: text.textContent ?? '', ink: style.fill, ground, drawn: true, size_px: Number.parseFloat(style.fontSize) * scale });
    }
  }
  return seen;
}

/** Every colour that anything shown is painted in, as CSS writes it. */
export function paints(): readonly string[] {
  const found = new Set<string>();
  for (const element of document.querySelectorAll('body, body *')) {
    if (element.getClientRects().length === 0) continue;
    const style = getComputedStyle(element);
    const colours = element instanceof SVGElement ? [style.fill, style.stroke] : [style.color, style.backgroundColor, style.borderTopColor, style.borderBottomColor, style.outlineColor];
    for (const colour of colours) if (/^rgb/u.test(colour) && !/^rgba\(.*, 0\)$/u.test(colour)) found.add(colour);
  }
  return [...found];
}

/** The headings that are shown, in order, as `2 Verdict`. */
export function headings(): readonly string[] {
  return [...document.querySelectorAll('h1, h2, h3, h4, h5, h6')].filter((heading) => heading.getClientRects().length > 0).map((heading) => `${heading.tagName.slice(1)} ${heading.textContent ?? ''}`);
}

/** Identifiers used twice, and names that point nowhere. */
export function brokenNames(): readonly string[] {
  const ids = [...document.querySelectorAll('[id]')].map(({ id }) => id);
  const twice = ids.filter((id, i) => ids.indexOf(id) !== i).map((id) => `twice: ${id}`);
  const pointing = [...document.querySelectorAll('[aria-labelledby]')].flatMap((element) => (element.getAttribute('aria-labelledby') ?? '').split(/\s+/u));
  const links = [...document.querySelectorAll('a[href^="#"]')].map((link) => (link.getAttribute('href') ?? '').slice(1));
  return [...twice, ...[...pointing, ...links].filter((id) => document.getElementById(id) === null).map((id) => `nowhere: ${id}`)];
}

/** Lines of the checks, whether shown or not. */
export function checkLines(): readonly string[] {
  const heading = [...document.querySelectorAll('h2')].find(({ textContent }) => textContent === 'The checks');
  return [...(heading?.closest('section')?.querySelectorAll('li') ?? [])].map((line) => (line.textContent ?? '').replace(/\s+/gu, ' ').trim());
}

/** Distance of the element with the focus from the top of the window, in CSS pixels, and its name. */
export function focused(): { readonly words: string; readonly tag: string; readonly outline: string } {
  const element = document.activeElement ?? document.body;
  return { words: element.getAttribute('aria-label') ?? element.textContent ?? '', tag: element.tagName, outline: getComputedStyle(element).outlineStyle };
}

/** Opens every part that is folded. */
export function unfold(): void {
  for (const part of document.querySelectorAll('details')) part.open = true;
}

/** How far the top of an element stands from the top of the window, in CSS pixels. */
export function fromTop(id: string): number {
  return document.getElementById(id)?.getBoundingClientRect().top ?? Number.NaN;
}
