import { letterOf, type NewsLetter, type OrderNews } from "./order-news";

/** Named after what is usual: a day promised after acceptance is another one, or the first. */
export const promiseChangedLetter = (news: OrderNews): NewsLetter =>
  letterOf(news, `${news.isFirstDay ? "A" : "Another"} day for your order ${news.orderNumber}`, [
    `we ${news.isFirstDay ? "" : "now "}expect to have finished your order ${news.orderNumber} on ${news.promisedOn ?? "a day we will tell you"}.`,
    "How far it is:",
  ]);
