/** mount fills root and follows the store. */
export function mount(root, store, about) {}
