/** How many of a list are named on the page; the heading leads to all of them. */
export const todayShown = 6;

export type TodayItem = {
  readonly key: string;
  readonly label: string;
  readonly detail: string;
  readonly href: string;
  /** A name of the state alphabet, where the item's own state says more than its place in the list. */
  readonly state?: string;
};

export type Waiting = { readonly count: number; readonly items: readonly TodayItem[] };
