import { orderStateLabels } from "@/lib/domain/order/labels";
import type { OrderFilter } from "@/lib/domain/order/list-query";
import { isOrderState, type OrderState } from "@/lib/domain/order/transitions";

const marks = {
  requested: "open",
  recorded: "open",
  accepted: "active",
  completed: "done",
  cancelled: "cancelled",
} as const satisfies Readonly<Record<OrderState, string>>;

export const orderMarks = (state: string): { readonly state: string; readonly label: string } =>
  isOrderState(state)
    ? { state: marks[state], label: orderStateLabels[state] }
    : { state: "open", label: state };

export const orderFilterLabels: Readonly<Record<OrderFilter, string>> = {
  open: "Open",
  ...orderStateLabels,
  all: "All",
};
