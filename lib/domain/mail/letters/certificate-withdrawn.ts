import { letterOf, type NewsLetter, type OrderNews } from "./order-news";

/** Signed and numbered, and its document could not be made: nobody has it, and nobody will. */
const neverMade = (news: OrderNews): NewsLetter =>
  letterOf(news, `A certificate of your order ${news.orderNumber} will not be issued`, [
    `A certificate of your order ${news.orderNumber} was signed, and its document could not be made. We have withdrawn it before it was issued: you have nothing of it to use or to send back. Its number stays, and says that it is withdrawn.`,
    "You find here which one it is, and why. We are sorry for the wait; write to us if anything is unclear:",
  ]);

/** The results are not to be used, and none follow: ISO/IEC 17025 7.8.8, 7.10.1 e. */
const issuedBefore = (news: OrderNews): NewsLetter =>
  letterOf(news, `A certificate of your order ${news.orderNumber} was withdrawn`, [
    `We have withdrawn a certificate of your order ${news.orderNumber}: its results are not to be used any more, and no other certificate takes its place.`,
    "You find here which one it is, and why. Please look at what you decided by these results, and tell whoever has the certificate from you. We are sorry for the trouble; write to us if anything is unclear:",
  ]);

export const certificateWithdrawnLetter = (news: OrderNews): NewsLetter =>
  news.isUnmade ? neverMade(news) : issuedBefore(news);
