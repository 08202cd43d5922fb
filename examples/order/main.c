/* SPDX-License-Identifier: MIT */
/* tunnelside-order: what all sides together need, how to cut it, what to buy, what it costs. */
#include <getopt.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "answer.h"
#include "command.h"
#include "html.h"
#include "memory.h"
#include "message.h"
#include "output.h"
#include "print.h"
#include "value.h"

const char program_name[] = "tunnelside-order";

typedef enum task { ORDER_FILES, SHOW_HELP, SHOW_VERSION } task;

typedef struct options {
    task task;
    units units;
    format format;
    const char *output, *prices, *in_hand;
    int for_customer;
    const char *number, *date; /* of the customer's copy */
    tside_stock stock;
} options;

static const char help[] = "Usage: tunnelside-order [OPTION]... FILE...\n"
                           "Orders what the sides of all files need together, files as tunnelside-plan has\n"
                           "them: every piece, one cut plan for each material, what to buy, what is left\n"
                           "over, and with --prices what it costs. FILE \"-\" is standard input.\n"
                           "\n"
                           "  -p, --prices=PRICES.csv  price it; see tunnelside-order(1) for the list\n"
                           "  -c, --for-customer       the customer's copy: neither cost nor markup\n"
                           "  -n, --number=TEXT        of that copy\n"
                           "  -d, --date=YYYY-MM-DD    of that copy\n"
                           "  -i, --in-hand=STOCK.csv  stock in hand, which is used first\n"
                           "  -k, --kerf=LENGTH        lost in each cut between two pieces; usual 3 mm\n"
                           "  -t, --trim=LENGTH        lost from each tube before its first piece; usual 0\n"
                           "  -a, --also=LENGTH        tubes are also sold in this length; may be repeated\n"
                           "  -u, --units=us|si        of the text; without it, as the first side's hip\n"
                           "  -f, --format=FORMAT      text or html, for people; json or csv, in SI\n"
                           "  -o, --output=FILE        write to FILE: whole, or not at all\n"
                           "  -h, --help               print this\n"
                           "  -V, --version            print the version\n"
                           "\n"
                           "A side that is refused does not stop the others: the order then says that it\n"
                           "is incomplete, and is not priced. Exit status: 1 where a file, a price or the\n"
                           "output is at fault, 2 where the command line is wrong. For choosing parts, not\n"
                           "a certificate: local codes, makers' ratings and licensed practice come first.\n";

/* Reads a length into a member of the stock, within the bounds of its row. */
static int set_length(const char *option, const char *words, tside_kind kind, const char *field, double *length)
{
    tside_place place;
    text why = {NULL, 0, 0};
    double value = 0;
    const int known = tside_field_find(kind, field, &place, NULL) == TSIDE_OK;
    if (read_quantity(words, "m", &value, &why) && known &&
        (value < place.field->low || value > place.field->high || (value <= place.field->low && place.field->low_open)))
        text_add(&why, "\"%s\": %g m is not from %g to %g m", words, value, place.field->low, place.field->high);
    if (why.length) {
        say("--%s: %s", option, text_of(&why));
        text_free(&why);
        return EXIT_REFUSED;
    }
    *length = value;
    return EXIT_DONE;
}

static int add_stock_length(tside_stock *stock, const char *words)
{
    double length = 0;
    const int status = set_length("also", words, TSIDE_KIND_STOCK_LENGTH, "length", &length);
    if (status)
        return status;
    if (stock->length_count == TSIDE_STOCK_LENGTHS - 1)
        return misuse("--also: more lengths than 7: ", words);
    stock->lengths[stock->length_count++].length = length;
    return EXIT_DONE;
}

/* Sets what an option asks for; returns an exit status, having said why where it is not EXIT_DONE. */
static int set_option(options *chosen, int option, const char *value)
{
    switch (option) {
    case 'p': chosen->prices = value; return EXIT_DONE;
    case 'i': chosen->in_hand = value; return EXIT_DONE;
    case 'c': chosen->for_customer = 1; return EXIT_DONE;
    case 'n': chosen->number = value; return EXIT_DONE;
    case 'd': chosen->date = value; return EXIT_DONE;
    case 'k': return set_length("kerf", value, TSIDE_KIND_STOCK, "kerf", &chosen->stock.kerf);
    case 't': return set_length("trim", value, TSIDE_KIND_STOCK, "trim", &chosen->stock.trim);
    case 'a': return add_stock_length(&chosen->stock, value);
    case 'u': return set_units(&chosen->units, value);
    case 'f': return set_format(&chosen->format, HTML, value);
    case 'o': chosen->output = value; return EXIT_DONE;
    case 'h': chosen->task = SHOW_HELP; return EXIT_DONE;
    case 'V': chosen->task = SHOW_VERSION; return EXIT_DONE;
    default: return EXIT_USAGE;
    }
}

static int read_options(options *chosen, int count, char **words)
{
    static const struct option known[] = {
        {"prices", required_argument, NULL, 'p'}, {"in-hand", required_argument, NULL, 'i'},
        {"for-customer", no_argument, NULL, 'c'}, {"number", required_argument, NULL, 'n'},
        {"date", required_argument, NULL, 'd'},   {"kerf", required_argument, NULL, 'k'},
        {"trim", required_argument, NULL, 't'},   {"also", required_argument, NULL, 'a'},
        {"units", required_argument, NULL, 'u'},  {"format", required_argument, NULL, 'f'},
        {"output", required_argument, NULL, 'o'}, {"help", no_argument, NULL, 'h'},
        {"version", no_argument, NULL, 'V'},      {NULL, 0, NULL, 0},
    };
    int option, status = EXIT_DONE;
    while (!status && (option = getopt_long(count, words, "p:i:cn:d:k:t:a:u:f:o:hV", known, NULL)) != -1)
        status = option == '?' ? misused_option(words) : set_option(chosen, option, optarg);
    return status;
}

static void print_sheet(text *out, const options *chosen, const answer *a)
{
    papers sheets = {NULL, 0, 0};
    papers_add(&sheets, order_sheet(a, order_in_us(chosen->units, a->order->all)));
    if (chosen->format == HTML)
        print_html(out, ORDER_CALLED, &sheets);
    else
        print_strip(out, sheets.list);
    papers_free(&sheets);
}

static void print_answer(text *out, const options *chosen, const answer *a)
{
    if (chosen->format == JSON)
        print_json(out, a);
    else if (chosen->format == CSV)
        print_table(out, a);
    else if (a->letter)
        print_customers_text(out, a, order_in_us(chosen->units, a->order->all));
    else
        print_sheet(out, chosen, a);
}

/* A price is given for a whole order or not at all: a total over some of the sides would look complete. */
static int answer_order(const options *chosen, const order *made, prices *list, const hand *in_hand, text *out)
{
    static const char incomplete[] = "a side is refused, and a price over the others would look complete";
    answer a = {.order = made, .no_price = "", .in_hand = in_hand};
    quote priced_order;
    letter customers;
    int good = 1, priced = chosen->prices && !made->refused;
    if (priced) {
        good = quote_make(&priced_order, made, list, order_in_us(chosen->units, made->all));
        a.price = &priced_order;
        if (good && chosen->for_customer) {
            quote_for_customer(&priced_order);
            good = letter_write(&customers, chosen->number, chosen->date, list);
            a.letter = &customers;
        }
    } else if (chosen->prices) {
        say("no price: %s", incomplete);
        a.no_price = incomplete;
        good = !chosen->for_customer;
    }
    if (good)
        print_answer(out, chosen, &a);
    if (priced)
        quote_free(&priced_order);
    return good;
}

static int order_files(const options *chosen, int count, char **names)
{
    work all = {.take_off = 1, .must_take = 1};
    prices list = {.count = 0};
    hand in_hand = {.count = 0};
    order made;
    text out = {NULL, 0, 0};
    int good;
    work_add_files(&all, count, names);
    good = !chosen->prices || prices_read(&list, chosen->prices);
    if (chosen->in_hand)
        good &= hand_read(&in_hand, chosen->in_hand);
    good &= order_make(&made, &all, &chosen->stock, &in_hand);
    if (good && (made.sides || chosen->format == JSON || chosen->format == CSV))
        good = answer_order(chosen, &made, &list, &in_hand, &out);
    if (good && out.length)
        good = write_output(&out, chosen->output);
    good &= !all.bad;
    text_free(&out);
    order_free(&made);
    prices_free(&list);
    hand_free(&in_hand);
    work_free(&all);
    return good ? EXIT_DONE : EXIT_REFUSED;
}

static int show(const options *chosen)
{
    text out = {NULL, 0, 0};
    int good;
    if (chosen->task == SHOW_HELP)
        text_add(&out, "%s", help);
    else
        text_add(&out, "%s %s\n", program_name, tside_version());
    good = write_output(&out, chosen->output);
    text_free(&out);
    return good ? EXIT_DONE : EXIT_REFUSED;
}

/* A copy without number and date is no quotation, and these are of nothing else. */
static int check_customers(const options *chosen)
{
    if (!chosen->for_customer)
        return chosen->number || chosen->date ? misuse("--number and --date are for --for-customer", "") : EXIT_DONE;
    if (!chosen->prices || !chosen->number || !*chosen->number || !chosen->date)
        return misuse("--for-customer needs --prices, --number and --date", "");
    if (chosen->format == HTML)
        return misuse("--for-customer goes with --format=text, json or csv, not ", "html");
    return is_date(chosen->date) ? EXIT_DONE : misuse("--date: no date, such as 2026-11-28: ", chosen->date);
}

int main(int count, char **words)
{
    options chosen = {.task = ORDER_FILES};
    int status, standard = 0;
    begin_program();
    json_set_alloc_funcs(take_memory, free); /* what the parser did not get would be missing in silence */
    tside_usual(TSIDE_KIND_STOCK, &chosen.stock);
    status = read_options(&chosen, count, words);
    if (status)
        return status;
    if (chosen.task != ORDER_FILES)
        return show(&chosen);
    if (optind == count)
        return misuse("no file", "");
    status = check_customers(&chosen);
    if (status)
        return status;
    for (int i = optind; i < count; i++)
        standard += !strcmp(words[i], "-");
    standard += chosen.prices && !strcmp(chosen.prices, "-");
    standard += chosen.in_hand && !strcmp(chosen.in_hand, "-");
    if (standard > 1)
        return misuse("standard input can be read once only", "");
    for (int i = optind; chosen.output && i < count; i++)
        if (is_same_file(chosen.output, words[i]))
            return misuse("--output: it is an input: ", chosen.output);
    if (chosen.output && chosen.prices && is_same_file(chosen.output, chosen.prices))
        return misuse("--output: it is the price list: ", chosen.output);
    if (chosen.output && chosen.in_hand && is_same_file(chosen.output, chosen.in_hand))
        return misuse("--output: it is the list of stock in hand: ", chosen.output);
    return order_files(&chosen, count - optind, words + optind);
}
