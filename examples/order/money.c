/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "money.h"

enum { HUNDRED = 100, MILLION = 1000000, MOST_PRICE_DIGITS = 10, MOST_SHARE_DIGITS = 4, SHARE_DECIMALS = 4 };

/* Digits, and where there is a point, digits after it. */
typedef struct decimal {
    size_t whole, decimals,
        length; /* digits before and after the point; characters in all, 0 where it is no such number */
} decimal;

static decimal decimal_at(const char *words)
{
    decimal d = {.whole = strspn(words, "0123456789")};
    const int point = words[d.whole] == '.';
    if (point)
        d.decimals = strspn(words + d.whole + 1, "0123456789");
    if (d.whole && (!point || d.decimals))
        d.length = d.whole + (point ? 1 + d.decimals : 0);
    return d;
}

/* The number times a power of ten, of which it has no more decimals. */
static long long scaled(const char *words, const decimal *d, size_t decimals)
{
    long long number = 0;
    for (size_t i = 0; i < d->length; i++)
        if (words[i] != '.')
            number = number * 10 + (words[i] - '0');
    for (size_t i = d->decimals; i < decimals; i++)
        number *= 10;
    return number;
}

static int refuse_words(const char *words, const char *what, text *why)
{
    if (!*words)
        text_add(why, "no %s is given", what);
    else if (*words == '-')
        text_add(why, "\"%s\" is negative: a %s is 0 or above", words, what);
    else if (strchr(words, ','))
        text_add(why,
                 "\"%s\" is ambiguous: a comma may part thousands or decimals; write a point before decimals, and "
                 "nothing between thousands",
                 words);
    else
        text_add(why, "\"%s\" is no %s: wanted digits and at most one point among them, without sign or currency",
                 words, what);
    return 0;
}

int read_money(const char *words, cents *amount, text *why)
{
    const decimal d = decimal_at(words);
    if (!d.length || words[d.length])
        return refuse_words(words, "price", why);
    if (d.decimals && d.decimals != 2) {
        text_add(why,
                 "\"%s\" is %s: a price has two decimals or none; what costs less than a cent is priced by the hundred",
                 words, d.decimals == 3 ? "ambiguous, its point may part thousands" : "malformed");
        return 0;
    }
    if (d.whole > MOST_PRICE_DIGITS) {
        text_add(why, "\"%s\" is above what makes sense: the most is %d digits before the point", words,
                 MOST_PRICE_DIGITS);
        return 0;
    }
    *amount = scaled(words, &d, 2);
    return 1;
}

int read_share(const char *words, millionths *share, text *why)
{
    const decimal d = decimal_at(words);
    const char *after = words + d.length;
    if (!d.length || (*after && strcmp(after, "%") && strcmp(after, " %")))
        return refuse_words(words, "share in percent", why);
    if (d.whole > MOST_SHARE_DIGITS || d.decimals > SHARE_DECIMALS) {
        text_add(why, "\"%s\" is no share that makes sense: the most is %d digits before the point and %d after it",
                 words, MOST_SHARE_DIGITS, SHARE_DECIMALS);
        return 0;
    }
    *share = scaled(words, &d, SHARE_DECIMALS);
    return 1;
}

int to_hundredths(double quantity, hundredths *rounded)
{
    if (!(quantity >= 0 && quantity <= 1e9))
        return 0;
    *rounded = (hundredths)(quantity * HUNDRED + 0.5);
    return 1;
}

/*
 * a b / divisor to the nearest, half up. With a divisor up to a million nothing overflows: what would be too much is
 * refused before it is multiplied.
 */
static int scale(long long a, long long b, long long divisor, cents *amount)
{
    if (b && a > MOST_MONEY * divisor / b)
        return 0;
    *amount = (a * b + divisor / 2) / divisor;
    return 1;
}

int multiply_price(cents price, hundredths quantity, int per, cents *amount)
{
    return scale(price, quantity, (long long)HUNDRED * per, amount);
}

int take_share(cents base, millionths share, cents *amount)
{
    return scale(base, share, MILLION, amount);
}

int add_money(cents *sum, cents amount)
{
    *sum += amount;
    return *sum <= MOST_MONEY;
}

/*
 * By long multiplication and division, a bit of the part at a time from its highest: what comes so far is a whole
 * number of cents and a rest below all, and no product has more than 64 bits.
 */
cents share_of(cents whole, cents part, cents all)
{
    cents amount = 0, rest = 0;
    for (int bit = 62; bit >= 0; bit--) {
        const long long next = 2 * rest + (part >> bit & 1 ? whole % all : 0);
        amount = 2 * amount + next / all + (part >> bit & 1 ? whole / all : 0);
        rest = next % all;
    }
    return amount + (2 * rest >= all);
}

void print_money(text *out, cents amount)
{
    text_add(out, "%lld.%02lld", amount / HUNDRED, amount % HUNDRED);
}

/* Without the zeros that end a fraction. */
static void print_decimal(text *out, long long number, long long unit, int decimals)
{
    text_add(out, "%lld.%0*lld", number / unit, decimals, number % unit);
    while (out->data[out->length - 1] == '0')
        text_cut(out, out->length - 1);
    if (out->data[out->length - 1] == '.')
        text_cut(out, out->length - 1);
}

void print_quantity(text *out, hundredths quantity)
{
    print_decimal(out, quantity, HUNDRED, 2);
}

void print_share(text *out, millionths share)
{
    print_decimal(out, share, MILLION / HUNDRED, SHARE_DECIMALS);
    text_add(out, " %%");
}
