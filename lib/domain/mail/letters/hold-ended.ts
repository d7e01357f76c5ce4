import { letterOf, type NewsLetter, type OrderNews } from "./order-news";

/** Neither which sensor nor what was found: the page behind the link says it. */
export const holdEndedLetter = (news: OrderNews): NewsLetter =>
  letterOf(news, `What stood still in your order ${news.orderNumber} is settled`, [
    `part of your order ${news.orderNumber} stood still until something was settled. That is done, ${
      news.awaitsAnother
        ? "and the order waits for another sensor of yours, in the place of what goes back to you unmeasured. Send or bring it, with the order number"
        : "and it waits no longer"
    }.`,
    "What becomes of each sensor, and how far the order is:",
  ]);
