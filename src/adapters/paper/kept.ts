/** A drawing that depends on nothing but what it is of, with the last `most` results kept: one head goes past at each step of its lot.
 *  @example kept(headPng, 48)(look) */
export function kept<Of, Made>(make: (of: Of) => Made, most: number): (of: Of) => Made {
  const made = new Map<string, Made>();
  return (of) => {
    const key = JSON.stringify(of);
    const one = made.get(key) ?? make(of);
    made.delete(key);
    made.set(key, one);
    for (const oldest of made.keys()) if (made.size > most) made.delete(oldest);
    return one;
  };
}
