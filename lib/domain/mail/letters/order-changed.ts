import { letterOf, type NewsLetter, type OrderNews } from "./order-news";

export const orderChangedLetter = (news: OrderNews): NewsLetter =>
  letterOf(news, `Your order ${news.orderNumber} was changed`, [
    `we have changed your order ${news.orderNumber} after it was accepted, as agreed with one of you. If the promised day changes with it, we write again. If you did not expect this, please write to us.`,
    "What the order says now, and how far it is:",
  ]);
