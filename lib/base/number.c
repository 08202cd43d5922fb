/* SPDX-License-Identifier: MIT */
/*
 * Decimal digits and doubles, each the nearest to the other, without the C library's locale: by whole numbers of any
 * length. Source: derivation.
 */
#include <float.h>
#include <math.h>

#include "base/doubles.h"
#include "base/number.h"

/* --- whole numbers --- */

static void big_set(tside_i_big *big, uint64_t value)
{
    big->limb[0] = (uint32_t)value;
    big->limb[1] = (uint32_t)(value >> 32);
    big->count = value >> 32 ? 2 : value ? 1 : 0;
}

/* big = big * factor + more */
static void big_grow(tside_i_big *big, uint32_t factor, uint32_t more)
{
    uint64_t carry = more;
    int i;
    for (i = 0; i < big->count; i++) {
        carry += (uint64_t)big->limb[i] * factor;
        big->limb[i] = (uint32_t)carry;
        carry >>= 32;
    }
    if (carry)
        big->limb[big->count++] = (uint32_t)carry;
}

static void big_power(tside_i_big *big, int power)
{
    while (power-- > 0)
        big_grow(big, 10, 0);
}

/* The factor is not nought: a unit's, or what a number stands over. */
static void big_multiply(tside_i_big *big, const tside_i_big *factor)
{
    tside_i_big product;
    int i, k;
    if (!big->count)
        return;
    product.count = big->count + factor->count;
    for (i = 0; i < product.count; i++)
        product.limb[i] = 0;
    for (i = 0; i < big->count; i++) {
        uint64_t carry = 0;
        for (k = 0; k < factor->count; k++) {
            carry += (uint64_t)big->limb[i] * factor->limb[k] + product.limb[i + k];
            product.limb[i + k] = (uint32_t)carry;
            carry >>= 32;
        }
        product.limb[i + k] = (uint32_t)carry;
    }
    if (!product.limb[product.count - 1])
        product.count--;
    *big = product;
}

static void big_add(tside_i_big *big, const tside_i_big *more)
{
    uint64_t carry = 0;
    int i;
    for (i = 0; i < big->count || i < more->count; i++) {
        carry += (uint64_t)(i < big->count ? big->limb[i] : 0) + (i < more->count ? more->limb[i] : 0);
        big->limb[i] = (uint32_t)carry;
        carry >>= 32;
    }
    big->count = i;
    if (carry)
        big->limb[big->count++] = (uint32_t)carry;
}

/* less: not above big */
static void big_subtract(tside_i_big *big, const tside_i_big *less)
{
    uint32_t borrow = 0;
    int i;
    for (i = 0; i < big->count; i++) {
        uint64_t taken = (uint64_t)(i < less->count ? less->limb[i] : 0) + borrow;
        borrow = big->limb[i] < taken;
        big->limb[i] = (uint32_t)(big->limb[i] - taken);
    }
    while (big->count && !big->limb[big->count - 1])
        big->count--;
}

/* Below, at or above 0 as a is below, at or above b. */
static int big_compare(const tside_i_big *a, const tside_i_big *b)
{
    int i = a->count;
    if (a->count != b->count)
        return a->count - b->count;
    while (i-- > 0)
        if (a->limb[i] != b->limb[i])
            return a->limb[i] < b->limb[i] ? -1 : 1;
    return 0;
}

/* big: above 0 */
static int big_bits(const tside_i_big *big)
{
    int bits = 32 * big->count;
    uint32_t top;
    for (top = big->limb[big->count - 1]; !(top & UINT32_C(0x80000000)); top <<= 1)
        bits--;
    return bits;
}

/* big = big * 2^places */
static void big_shift(tside_i_big *big, int places)
{
    const int limbs = places / 32;
    int i;
    if (!big->count)
        return;
    for (i = big->count; limbs && i-- > 0;)
        big->limb[i + limbs] = big->limb[i];
    for (i = 0; i < limbs; i++)
        big->limb[i] = 0;
    big->count += limbs;
    big_grow(big, UINT32_C(1) << places % 32, 0);
}

/* number = number * 2^places */
static void exact_shift(tside_i_exact *number, int places)
{
    big_shift(places > 0 ? &number->over : &number->under, places > 0 ? places : -places);
}

/* To within 2^-50 of it. */
static double big_about(const tside_i_big *big)
{
    double value = 0;
    for (int i = big->count; i-- > 0;)
        value = value * 4294967296. + big->limb[i];
    return value;
}

/* over/under to the nearest whole number below 2^63 by long division, bit by bit; both are used up. */
static uint64_t divide(tside_i_big *over, tside_i_big *under, int half_to_even)
{
    uint64_t whole = 0;
    int steps = big_bits(over) - big_bits(under), half;
    if (steps < 0)
        steps = 0;
    big_shift(under, steps);
    for (; steps >= 0; steps--) {
        whole <<= 1;
        if (big_compare(over, under) >= 0) {
            big_subtract(over, under);
            whole |= 1;
        }
        big_shift(over, 1);
    }
    half = big_compare(over, under); /* over is now twice the remainder */
    return whole + (half > 0 || (half == 0 && (!half_to_even || whole & 1)));
}

/* A small one that is not hard by the middle between two a quotient of doubles tells as well. */
static uint64_t nearest(tside_i_exact *number, int half_to_even)
{
    const double about = big_about(&number->over) / big_about(&number->under) + 0.5, beyond = about - floor(about);
    if (about < 1e9 && beyond > 1e-3 && beyond < 1 - 1e-3)
        return (uint64_t)about;
    return divide(&number->over, &number->under, half_to_even);
}

/* --- reading --- */

static int is_digit(char c)
{
    return c >= '0' && c <= '9';
}

/* Appends digits to a number that has *count of them already. */
static const char *read_digits(const char **at, tside_i_big *big, int *count)
{
    if (!is_digit(**at))
        return "a digit is wanted here";
    for (; is_digit(**at); ++*at) {
        if (++*count > TSIDE_I_DIGITS)
            return "a number has at most 40 digits";
        big_grow(big, 10, (uint32_t)(**at - '0'));
    }
    return NULL;
}

const char *tside_i_read_whole(const char **at, tside_i_exact *number)
{
    int count = 0;
    big_set(&number->over, 0);
    big_set(&number->under, 1);
    return read_digits(at, &number->over, &count);
}

/* The exponent, if one stands here; an "e" without digits is none. */
static const char *read_exponent(const char **at, int *exponent)
{
    const char *digit = *at + 1;
    int minus, size = 0;
    if (**at != 'e' && **at != 'E')
        return NULL;
    minus = *digit == '-';
    if (*digit == '-' || *digit == '+')
        digit++;
    if (!is_digit(*digit))
        return NULL;
    for (*at = digit; is_digit(**at); ++*at) {
        size = 10 * size + (**at - '0');
        if (size > TSIDE_I_EXPONENT)
            return "an exponent is at most 400";
    }
    *exponent = minus ? -size : size;
    return NULL;
}

const char *tside_i_read_decimal(const char **at, tside_i_exact *number, int *whole)
{
    const char *start = *at, *reason = NULL;
    int count = 0, decimals = 0, exponent = 0;
    big_set(&number->over, 0);
    big_set(&number->under, 1);
    if (**at != '.')
        reason = is_digit(**at) ? read_digits(at, &number->over, &count) : "a number is wanted here";
    *whole = 1;
    if (!reason && **at == '.') {
        *whole = 0;
        decimals = -count;
        ++*at;
        reason = read_digits(at, &number->over, &count);
        decimals += count;
    }
    start = *at;
    if (!reason)
        reason = read_exponent(at, &exponent);
    if (reason)
        return reason;
    if (*at > start)
        *whole = 0;
    tside_i_exact_power(number, exponent - decimals);
    return NULL;
}

/* --- reckoning --- */

void tside_i_exact_from(tside_i_exact *number, double value)
{
    int power;
    const double part = frexp(value, &power); /* value = part 2^power, part 1/2 to 1 */
    big_set(&number->over, (uint64_t)ldexp(part, DBL_MANT_DIG));
    big_set(&number->under, 1);
    exact_shift(number, power - DBL_MANT_DIG);
}

void tside_i_exact_scale(tside_i_exact *number, uint64_t over, uint64_t under)
{
    tside_i_big factor;
    big_set(&factor, over);
    big_multiply(&number->over, &factor);
    big_set(&factor, under);
    big_multiply(&number->under, &factor);
}

void tside_i_exact_power(tside_i_exact *number, int power)
{
    big_power(&number->over, power);
    big_power(&number->under, -power);
}

void tside_i_exact_add(tside_i_exact *number, const tside_i_exact *more)
{
    tside_i_big product = more->over; /* a/b + c/d = (a d + c b)/(b d) */
    big_multiply(&product, &number->under);
    big_multiply(&number->over, &more->under);
    big_add(&number->over, &product);
    big_multiply(&number->under, &more->under);
}

int tside_i_exact_below(const tside_i_exact *number, uint32_t limit)
{
    tside_i_big product = number->under;
    big_grow(&product, limit, 0);
    return big_compare(&number->over, &product) < 0;
}

uint64_t tside_i_exact_nearest(const tside_i_exact *number)
{
    tside_i_exact rest = *number;
    return nearest(&rest, 0);
}

int tside_i_exact_double(const tside_i_exact *number, double *value)
{
    const int least_power = DBL_MIN_EXP - DBL_MANT_DIG; /* of the least double above 0 */
    tside_i_exact rest = *number;
    uint64_t units;
    int power, unit_power;
    if (!rest.over.count) {
        *value = 0;
        return 1;
    }
    power = big_bits(&rest.over) - big_bits(&rest.under);
    exact_shift(&rest, -power);
    if (big_compare(&rest.over, &rest.under) < 0) {
        exact_shift(&rest, 1);
        power--;
    }
    /* The number is now rest times 2^power, rest from 1 to below 2. The unit of its last place is 2^unit_power. */
    unit_power = power - (DBL_MANT_DIG - 1);
    if (unit_power < least_power)
        unit_power = least_power;
    if (power < unit_power - 1) {
        *value = 0;
        return 1;
    }
    exact_shift(&rest, power - unit_power);
    units = nearest(&rest, 1);
    if (power >= DBL_MAX_EXP || (power == DBL_MAX_EXP - 1 && units >> DBL_MANT_DIG))
        return 0;
    *value = ldexp((double)units, unit_power);
    return 1;
}

/* --- writing --- */

tside_i_text tside_i_empty(char *to, size_t size)
{
    const tside_i_text text = {to, size, 0};
    if (size)
        *to = '\0';
    return text;
}

void tside_i_put_character(tside_i_text *text, char more)
{
    if (text->length + 1 < text->size) {
        text->to[text->length] = more;
        text->to[text->length + 1] = '\0';
    }
    text->length++;
}

void tside_i_put(tside_i_text *text, const char *more)
{
    while (*more)
        tside_i_put_character(text, *more++);
}

void tside_i_put_decimal(tside_i_text *text, uint64_t digits, int decimals)
{
    uint64_t place = 1, point = 1;
    int i;
    for (i = 0; i < decimals; i++)
        point *= 10;
    while (place < point || digits / place >= 10)
        place *= 10;
    for (; place; place /= 10) {
        tside_i_put_character(text, (char)('0' + digits / place % 10));
        if (place == point && place > 1)
            tside_i_put_character(text, '.');
    }
}

void tside_i_put_whole(tside_i_text *text, uint64_t number)
{
    tside_i_put_decimal(text, number, 0);
}

/* value / 10^power as a whole number with six digits, or seven where power is one too low. */
static uint64_t six_digits(double value, int power)
{
    tside_i_exact number;
    tside_i_exact_from(&number, value);
    tside_i_exact_power(&number, 5 - power);
    return tside_i_exact_nearest(&number);
}

static void put_power(tside_i_text *text, int power)
{
    const int size = power < 0 ? -power : power;
    tside_i_put(text, power < 0 ? "e-" : "e+");
    if (size < 10)
        tside_i_put_character(text, '0');
    tside_i_put_whole(text, (uint64_t)size);
}

void tside_i_put_number(tside_i_text *text, double value)
{
    uint64_t digits;
    int power2, power, decimals = 5;
    if (value < 0) {
        tside_i_put_character(text, '-');
        value = -value;
    }
    if (!isfinite(value) || value == 0) {
        tside_i_put(text, value == 0 ? "0" : isnan(value) ? "nan" : "inf");
        return;
    }
    (void)frexp(value, &power2); /* value is 2^(power2 - 1) or more, so that power starts right or one too low */
    power = (int)floor((power2 - 1) * 0.301029995663981195);
    while ((digits = six_digits(value, power)) >= 1000000)
        power++;
    for (; digits % 10 == 0; decimals--)
        digits /= 10;
    if (power < -4 || power > 5) {
        tside_i_put_decimal(text, digits, decimals);
        put_power(text, power);
        return;
    }
    for (; decimals < power; decimals++)
        digits *= 10;
    tside_i_put_decimal(text, digits, decimals - power);
}
