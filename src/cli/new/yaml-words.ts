/** A quantity or a key as one YAML value, whatever was typed: nothing in it can become a second key or a remark. */
export function yamlValue(text: string): string {
  return /^[\w./°%′″'"² -]+$/.test(text) && !/^['"\s-]|["']$|\s$/.test(text) ? text : JSON.stringify(text);
}

/** A text as one YAML value: plain where that is safe, in quotes otherwise. */
export function yamlText(text: string): string {
  return /^[A-Za-z][\w ,.()-]*[\w)]$/.test(text) && !/^(?:true|false|null|yes|no|on|off|y|n)$/i.test(text)
    ? text
    : JSON.stringify(text);
}

/** A file name made of a name: `Reading nook, left` → `reading-nook-left.yaml`. */
export function fileNameOf(name: string, otherwise = 'plan'): string {
  const words = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${words === '' ? otherwise : words}.yaml`;
}
