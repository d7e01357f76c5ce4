const isNumber = (text: string): boolean => /^\d{1,9}$/.test(text);

/** Places as a person counts them: 2 before 10, numbers before names. The same in every language. */
export const comparePlaces = (
  left: { readonly place: string },
  right: { readonly place: string },
): number => {
  const [a, b] = [left.place, right.place];
  if (isNumber(a) && isNumber(b) && Number(a) !== Number(b)) return Number(a) - Number(b);
  if (isNumber(a) !== isNumber(b)) return isNumber(a) ? -1 : 1;
  return a < b ? -1 : a > b ? 1 : 0;
};
