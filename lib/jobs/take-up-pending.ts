import type { Task } from "graphile-worker";
import { takeUpPending } from "@/lib/operations/certificate/take-up-pending";

/** Once a day and at each start: signed certificates whose job was given up, or never was, have one again. */
export const takeUpPendingTask = (): Task => () => takeUpPending();
