package tracker

import "sync/atomic"

// grow is a list with one more item. It copies nothing where it can help it,
// and changes no item that an earlier list has: several lists may have grown out
// of one, and be read by several goroutines meanwhile. End is the counter that
// came with the list, nil for one that was not made here: whoever moves it on
// owns the free place behind the last item.
func grow[T any](items []T, end *atomic.Int64, item T) ([]T, *atomic.Int64) {
	n := int64(len(items))
	if end != nil && len(items) < cap(items) && end.CompareAndSwap(n, n+1) {
		return append(items, item), end
	}
	const room = 16
	longer := append(make([]T, 0, 2*len(items)+room), items...)
	end = &atomic.Int64{}
	end.Store(n + 1)
	return append(longer, item), end
}
