import "server-only";
import { forbidden, notFound } from "next/navigation";
import { Refused } from "@/lib/domain/refusal";

/**
 * A view's answer for a page: `const data = await load(orderView(actor, id))`.
 * Not there (or not yours) becomes the not-found page, not permitted becomes its own plain page.
 */
export const load = async <T>(answer: Promise<T>): Promise<T> => {
  try {
    return await answer;
  } catch (error) {
    if (error instanceof Refused && error.refusal.code === "not-found") notFound();
    if (error instanceof Refused && error.refusal.code === "not-permitted") forbidden();
    throw error;
  }
};
