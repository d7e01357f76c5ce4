import { letterOf, type NewsLetter, type OrderNews, plural } from "./order-news";

/** To the front desk: a customer asks for work. */
export const orderRequestedLetter = (news: OrderNews): NewsLetter =>
  letterOf(news, `Work was requested: ${news.orderNumber}`, [
    `a customer has requested work for ${plural(news.count, "sensor")}, as ${news.orderNumber}. It waits to be looked at:`,
  ]);
