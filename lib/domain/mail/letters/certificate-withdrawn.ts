import { letterOf, type NewsLetter, type OrderNews } from "./order-news";

/** The results are not to be used, and none follow: ISO/IEC 17025 7.8.8, 7.10.1 e. */
export const certificateWithdrawnLetter = (news: OrderNews): NewsLetter =>
  letterOf(news, `A certificate of your order ${news.orderNumber} was withdrawn`, [
    `We have withdrawn a certificate of your order ${news.orderNumber}: its results are not to be used any more, and no other certificate takes its place.`,
    "You find here which one it is, and why. Please look at what you decided by these results, and tell whoever has the certificate from you. We are sorry for the trouble; write to us if anything is unclear:",
  ]);
