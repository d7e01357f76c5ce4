import { letterOf, type NewsLetter, type OrderNews } from "./order-news";

/** Words were corrected, the results stay: ISO/IEC 17025 7.8.8, 7.10.1 e. */
export const certificateAmendedLetter = (news: OrderNews): NewsLetter =>
  letterOf(news, `A corrected certificate for your order ${news.orderNumber}`, [
    `We have corrected what a certificate of your order ${news.orderNumber} says. Its results stay as they were. The corrected certificate has a number of its own and counts instead of the earlier one.`,
    "Both are here, with the reason for the change. Please use the corrected one, and pass it on to whoever has the earlier one from you:",
  ]);
