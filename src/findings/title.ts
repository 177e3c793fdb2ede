/** What a rule without a title of its own is called: the words of its id, `class/few-crossbars` is `Few crossbars`. */
export function titleOfId(id: string): string {
  const words = id.slice(id.indexOf('/') + 1).replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}
