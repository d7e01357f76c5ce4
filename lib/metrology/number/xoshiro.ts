/** The polynomial of a jump of 2^64 steps, from the authors' reference program (xoshiro128starstar.c). */
const JUMP = [0x8764000b, 0xf542d2d3, 0x6fa035c3, 0x77f2db5b] as const;

/**
 * Fills `words` with the next 32-bit words of xoshiro128** 1.1 and moves `state` on.
 *
 * Source: D. Blackman and S. Vigna, "Scrambled linear pseudorandom number generators", ACM Trans. Math. Softw. 47
 * (2021) 36; their reference program is in the public domain. Period 2^128 − 1. Only shifts, additions and exclusive
 * ors of 32-bit integers, which ECMA-262 defines to the bit; ·5 and ·9 are a shift and an addition.
 *
 * `state`: four words, not all zero (that state never leaves zero). No unit. Words are signed: `>>> 0` gives them as published.
 */
export function fillWords(state: Int32Array, words: Int32Array): void {
  let s0 = state[0] as number;
  let s1 = state[1] as number;
  let s2 = state[2] as number;
  let s3 = state[3] as number;
  for (let i = 0; i < words.length; i += 1) {
    const five = ((s1 << 2) + s1) | 0;
    const turned = (five << 7) | (five >>> 25);
    words[i] = (turned << 3) + turned;
    const t = s1 << 9;
    s2 ^= s0;
    s3 ^= s1;
    s1 ^= s2;
    s0 ^= s3;
    s2 ^= t;
    s3 = (s3 << 11) | (s3 >>> 21);
  }
  state[0] = s0;
  state[1] = s1;
  state[2] = s2;
  state[3] = s3;
}

/**
 * Moves `state` on by 2^64 words at once, so that streams from one seed cannot overlap (the reference program's
 * jump()). Range and source as for `fillWords`; no unit, no error cases.
 */
export function jump(state: Int32Array): void {
  const jumped = new Int32Array(4);
  const word = new Int32Array(1);
  for (const polynomial of JUMP) {
    for (let bit = 0; bit < 32; bit += 1) {
      if ((polynomial >>> bit) & 1) {
        for (let i = 0; i < 4; i += 1) jumped[i] = (jumped[i] as number) ^ (state[i] as number);
      }
      fillWords(state, word);
    }
  }
  state.set(jumped);
}
