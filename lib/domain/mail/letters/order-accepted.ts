import { letterOf, type NewsLetter, type OrderNews } from "./order-news";

export const orderAcceptedLetter = (news: OrderNews): NewsLetter =>
  letterOf(news, `Your order ${news.orderNumber} is accepted`, [
    `we have accepted your order ${news.orderNumber}.${news.promisedOn ? ` We expect to have finished it on ${news.promisedOn}.` : ""} Please send the sensors, with the order's number on the parcel.`,
    "What was agreed, and how far it is:",
  ]);
