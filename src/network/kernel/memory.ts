/** One number of an array of doubles that begins at an address. */
export function at(array: usize, index: i32): f64 {
  return load<f64>(array + ((<usize>index) << 3));
}

export function put(array: usize, index: i32, value: f64): void {
  store<f64>(array + ((<usize>index) << 3), value);
}

/** One number of an array of whole numbers. */
export function whole(array: usize, index: i32): i32 {
  return load<i32>(array + ((<usize>index) << 2));
}
