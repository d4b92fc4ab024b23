"""The operators of one page after the other in, the same packed out, in their order."""

import zlib
from collections import deque
from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from concurrent.futures import Future

_MANY = 8  # pages; of fewer the threads would take longer to load than they save
_AHEAD = 8  # pages that may wait to be packed


def each_packed(pages: Iterable[bytes], count: int) -> Iterator[bytes]:
    """Yield each of so many pages packed; of many, while the next ones are drawn.

    Packing takes longer than drawing, and lets other threads go on meanwhile.
    """
    if count < _MANY:
        yield from map(zlib.compress, pages)
        return
    from concurrent.futures import ThreadPoolExecutor

    with ThreadPoolExecutor() as pool:
        packing: deque[Future[bytes]] = deque()
        for page in pages:
            packing.append(pool.submit(zlib.compress, page))
            if len(packing) > _AHEAD:
                yield packing.popleft().result()
        yield from (each.result() for each in packing)
