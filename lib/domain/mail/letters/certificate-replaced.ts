import { letterOf, type NewsLetter, type OrderNews } from "./order-news";

/** The results are others: ISO/IEC 17025 7.8.8, 7.10.1 e. */
export const certificateReplacedLetter = (news: OrderNews): NewsLetter =>
  letterOf(news, `A certificate of your order ${news.orderNumber} was replaced`, [
    `We have replaced a certificate of your order ${news.orderNumber}: its results were evaluated again, and what the earlier one states is not to be used any more.`,
    "Both are here, with the reason. Please look at what you decided by the earlier results, and pass the new certificate on to whoever has the earlier one from you:",
  ]);
