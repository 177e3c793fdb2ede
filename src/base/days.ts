/** Days of the week as they are written in files, from Monday on. */
export const weekdays = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const;
export type Weekday = (typeof weekdays)[number];

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];
const daysInMonth = (year: number, month: number): number =>
  [31, year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][
    month - 1
  ] ?? 0;

/** Days since 1 January 1970 of a day such as `2027-01-12`, Gregorian; null when the calendar has no such day. */
export function dayNumber(text: string): number | null {
  const [year = 0, month = 0, day = 0] = /^\d{4}-\d\d-\d\d$/u.test(text) ? text.split('-').map(Number) : [];
  if (year < 1600 || day < 1 || day > daysInMonth(year, month)) return null;
  const before = year - 1;
  const leaps = (y: number): number => Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
  let days = before * 365 + leaps(before) - (1969 * 365 + leaps(1969)) + day - 1;
  for (let m = 1; m < month; m++) days += daysInMonth(year, m);
  return days;
}

/** Year, month and day of the month of a day number. */
function partsOf(number: number): { readonly year: number; readonly month: number; readonly day: number } {
  let year = 1970 + Math.floor(number / 365.2425);
  while ((dayNumber(`${year + 1}-01-01`) ?? Infinity) <= number) year += 1;
  while ((dayNumber(`${year}-01-01`) ?? -Infinity) > number) year -= 1;
  let day = number - (dayNumber(`${year}-01-01`) ?? 0) + 1;
  let month = 1;
  for (; day > daysInMonth(year, month); month++) day -= daysInMonth(year, month);
  return { year, month, day };
}

/** `2027-01-12` */
export function dayText(number: number): string {
  const { year, month, day } = partsOf(number);
  return `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}

/** The day of the week; 1 January 1970 was a Thursday. */
export const weekdayOf = (number: number): Weekday => weekdays[(((number + 3) % 7) + 7) % 7] as Weekday;

/** `Tuesday, 12 January 2027` */
export function dayInWords(number: number): string {
  const { year, day } = partsOf(number);
  const weekday = weekdayOf(number);
  return `${weekday.charAt(0).toUpperCase()}${weekday.slice(1)}, ${day} ${monthOf(number)} ${year}`;
}

/** `January` */
export const monthOf = (number: number): string => months[partsOf(number).month - 1] as string;
