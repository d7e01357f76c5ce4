import { letterOf, type NewsLetter, type OrderNews, plural } from "./order-news";

export const certificateReadyLetter = (news: OrderNews): NewsLetter =>
  letterOf(
    news,
    `${plural(news.count, "certificate")} of your order ${news.orderNumber} ${news.count === 1 ? "is" : "are"} ready`,
    [
      `${plural(news.count, "certificate")} of your order ${news.orderNumber} ${news.count === 1 ? "is" : "are"} signed, sealed and stored. For reasons of confidentiality no certificate goes by mail; they wait for you here:`,
    ],
  );
