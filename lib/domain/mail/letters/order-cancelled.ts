import { letterOf, type NewsLetter, type OrderNews } from "./order-news";

/** Why stands in the portal: a reason may be nobody else's business. */
export const orderCancelledLetter = (news: OrderNews): NewsLetter =>
  letterOf(news, `${news.orderNumber} was cancelled`, [
    `${news.orderNumber} was cancelled: we do no more work on it. ${news.isNoneHere ? "" : "Sensors of it that are still here go back to you. "}If you did not expect this, please write to us.`,
    "Why, and what was said about it:",
  ]);
