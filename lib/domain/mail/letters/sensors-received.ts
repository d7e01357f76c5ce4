import { letterOf, type NewsLetter, type OrderNews, plural } from "./order-news";

export const sensorsReceivedLetter = (news: OrderNews): NewsLetter =>
  letterOf(news, `${plural(news.count, "sensor")} of your order ${news.orderNumber} arrived`, [
    `${plural(news.count, "sensor")} of your order ${news.orderNumber} ${news.count === 1 ? "has" : "have"} arrived and been looked at. If anything is not as you described it, we ask you before we go on.`,
    "What we found, and how far it is:",
  ]);
