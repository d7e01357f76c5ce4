import { letterOf, type NewsLetter, type OrderNews } from "./order-news";

export const externalResultReadyLetter = (news: OrderNews): NewsLetter =>
  letterOf(news, `A result from another laboratory for your order ${news.orderNumber} is here`, [
    `Part of your order ${news.orderNumber} was measured for us by another laboratory, as agreed. We checked what we recorded of its certificate. For reasons of confidentiality no certificate goes by mail; it waits for you here:`,
  ]);
