import { letterOf, type NewsLetter, type OrderNews, plural } from "./order-news";

export const requestReceivedLetter = (news: OrderNews): NewsLetter =>
  letterOf(news, `We have your request ${news.orderNumber}`, [
    `thank you: your request for ${plural(news.count, "sensor")} has arrived as ${news.orderNumber}. We look at what you ask for and come back to you; nothing is agreed yet.`,
    "You can follow it here:",
  ]);
