/** What a letter about an order may say: nothing confidential, no sensor by its number, no result, no price. */
export type OrderNews = {
  readonly name: string;
  readonly laboratory: string;
  readonly orderNumber: string;
  /** YYYY-MM-DD, or null where no day is promised. */
  readonly promisedOn: string | null;
  /** How many sensors or certificates it is about. */
  readonly count: number;
  readonly link: string;
  /** Of a certificate whose document was never made, so that nobody has it. */
  readonly isUnmade?: boolean;
  /** Of a hold: another sensor is awaited in the place of the one that goes back unmeasured. */
  readonly awaitsAnother?: boolean;
  /** Of a promised day: none was promised before. */
  readonly isFirstDay?: boolean;
  /** Of a cancelled order: none of its sensors is here. */
  readonly isNoneHere?: boolean;
};

export type NewsLetter = { readonly subject: string; readonly body: string };

export const plural = (count: number, one: string): string => `${count} ${one}${count === 1 ? "" : "s"}`;

/** Greeting, paragraphs, where to look, who writes. */
export const letterOf = (news: OrderNews, subject: string, paragraphs: readonly string[]): NewsLetter => ({
  subject,
  body: [
    `Dear ${news.name},`,
    ...paragraphs.flatMap((paragraph) => ["", paragraph]),
    "",
    news.link,
    "",
    news.laboratory,
    "",
  ].join("\n"),
});
