/** Made once for each object, and kept as long as that is. For objects that never change, such as a roster. */
export const oncePer = <K extends WeakKey, V>(make: (of: K) => V): ((of: K) => V) => {
  const made = new WeakMap<K, V>();
  return (of) => {
    const known = made.get(of);
    if (known !== undefined) return known;
    const fresh = make(of);
    made.set(of, fresh);
    return fresh;
  };
};
