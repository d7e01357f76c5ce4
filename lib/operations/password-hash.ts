import { hash, verify } from "@node-rs/argon2";
import { Refused } from "@/lib/domain/refusal";

/** argon2id, OWASP ASVS 5.0 appendix C: t ≥ 3 needs 12 MiB; this is 64 MiB. */
export const argon2Parameters = {
  // Argon2id; the package's own name for it is a const enum, which isolated modules cannot read.
  algorithm: 2,
  memoryCost: 65_536,
  timeCost: 3,
  parallelism: 1,
} as const;

/** 64 MiB each: many at once would exhaust the machine before it answered anybody. */
const atOnce = 4;
const mostWaiting = 40;
let running = 0;
const waiting: (() => void)[] = [];

const inTurn = async <T>(work: () => Promise<T>): Promise<T> => {
  if (running >= atOnce) {
    if (waiting.length >= mostWaiting)
      throw new Refused({
        code: "too-many",
        message: "Too many people sign in at this moment. Try again shortly.",
      });
    await new Promise<void>((resume) => waiting.push(resume));
  } else running += 1;
  try {
    return await work();
  } finally {
    // The place goes straight to the next in the queue, so that nobody slips in between.
    const next = waiting.shift();
    if (next) next();
    else running -= 1;
  }
};

export const hashPassword = (password: string): Promise<string> =>
  inTurn(() => hash(password, argon2Parameters));

export const verifyPassword = (stored: string, typed: string): Promise<boolean> =>
  inTurn(() => verify(stored, typed));

/** Of random bytes nobody kept: what an unknown address is compared with, so that it costs the same time. */
export const nobodysHash =
  "$argon2id$v=19$m=65536,t=3,p=1$PeEwFNcnmS9Wsf9pbNjWdQ$3VShEneTIFe9dpWObO/bIcw8tzqzC/EoIjAZ7WYhr3E";
