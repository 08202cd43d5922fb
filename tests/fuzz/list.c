/* SPDX-License-Identifier: MIT */
/* Price lists: read, or something is said of them. */
#include "fuzz.h"
#include "prices.h"
#include "programs.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    prices list;
    int good;
    fuzz_content(data, size);
    good = prices_read(&list, "prices.csv");
    HOLDS(good == !fuzz_said(), "%s", good ? "good, and something said" : "bad, and nothing said");
    for (int i = 0; i < list.count; i++) {
        const price_row *row = list.rows + i;
        HOLDS(row->kind < PRICE_KINDS && row->unit < PRICE_UNITS, "row %d", i);
        HOLDS(row->amount >= 0 && row->mass >= 0 && row->length >= 0 && row->width >= 0, "row %d is below nought", i);
    }
    prices_free(&list);
    return 0;
}
