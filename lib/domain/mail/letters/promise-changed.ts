import { letterOf, type NewsLetter, type OrderNews } from "./order-news";

export const promiseChangedLetter = (news: OrderNews): NewsLetter =>
  letterOf(news, `Another day for your order ${news.orderNumber}`, [
    `we now expect to have finished your order ${news.orderNumber} on ${news.promisedOn ?? "a day we will tell you"}.`,
    "How far it is:",
  ]);
