/* SPDX-License-Identifier: MIT */
/* Columns of the roll: the library's own formulas, which its private header has inline, in loops that a compiler can make wide. */
#ifndef CORE_ROLL_H
#define CORE_ROLL_H

#include "shape/roll.h"

typedef tside_status roll_function(const tside_roll *roll, double value, double *answer, tside_fault *fault);

/*
 * The first value that is not from 0 to the greatest, or -1. Numbers that are not below 0 have no sign bit, and stand in the order of their bits,
 * with what is no number above all: so one loop of whole numbers, which can be wide, says whether any is beyond.
 */
static Py_ssize_t first_beyond(const double *in, Py_ssize_t step, Py_ssize_t rows, double greatest)
{
    unsigned long long top, bits, beyond = 0;
    Py_ssize_t row = 0;
    memcpy(&top, &greatest, sizeof top);
    if (step == 1) {
        for (Py_ssize_t i = 0; i < rows; i++) {
            memcpy(&bits, in + i, sizeof bits);
            beyond |= bits | (top - bits);
        }
        if (!(beyond >> 63))
            return -1;
    }
    while (row < rows && in[row * step] >= 0 && in[row * step] <= greatest)
        row++;
    return row < rows ? row : -1;
}

/* Apart for columns without gaps, which most are: those are what a compiler makes wide. */
#define ROLL_COLUMN(NAME, FORMULA)                                                                                                             \
    static void NAME(const tside_roll *given, const double *in, Py_ssize_t in_step, double *out, Py_ssize_t out_step, Py_ssize_t rows)           \
    {                                                                                                                                          \
        const tside_roll copy = *given, *roll = &copy;                                                                                         \
        if (in_step == 1 && out_step == 1)                                                                                                     \
            for (Py_ssize_t i = 0; i < rows; i++) {                                                                                            \
                const double value = in[i];                                                                                                    \
                out[i] = FORMULA;                                                                                                              \
            }                                                                                                                                  \
        else                                                                                                                                   \
            for (Py_ssize_t i = 0; i < rows; i++) {                                                                                            \
                const double value = in[i * in_step];                                                                                          \
                out[i * out_step] = FORMULA;                                                                                                   \
            }                                                                                                                                  \
    }

ROLL_COLUMN(column_of_wraps, tside_i_roll_wraps(roll, value))
ROLL_COLUMN(column_of_taken_up, tside_i_roll_length(roll, value))
ROLL_COLUMN(column_of_diameter, roll->core + 2 * tside_i_roll_te(roll) * value)

static const struct {
    const char *name;
    roll_function *one;
    void (*many)(const tside_roll *given, const double *in, Py_ssize_t in_step, double *out, Py_ssize_t out_step, Py_ssize_t rows);
    double greatest;
} roll_columns[] = {
    {"taken_up", tside_roll_wraps, column_of_wraps, 10000},
    {"wraps", tside_roll_taken_up, column_of_taken_up, 1000},
    {"wraps", tside_roll_diameter, column_of_diameter, 1000},
};

/* roll_rows(which, roll, in, out): one of the columns above. Nothing is written where a value is refused. */
static PyObject *core_roll_rows(PyObject *self, PyObject *args)
{
    PyObject *roll, *in, *out;
    const Py_buffer *from, *to;
    const void *at;
    columns *all;
    int which, good = 0;
    (void)self;
    if (!PyArg_ParseTuple(args, "iOOO", &which, &roll, &in, &out) || !structure_from(roll, TSIDE_KIND_ROLL, "roll", &at))
        return NULL;
    if (which < 0 || which >= (int)(sizeof roll_columns / sizeof *roll_columns)) {
        PyErr_SetString(PyExc_ValueError, "roll_rows: no such column");
        return NULL;
    }
    all = PyMem_Calloc(1, sizeof *all);
    if (!all)
        return PyErr_NoMemory();
    from = view_of(all, in, roll_columns[which].name, "d", sizeof(double), 0, 0);
    to = from ? view_of(all, out, "out", "d", sizeof(double), from->shape[0], 1) : NULL;
    if (to && (from->strides[0] % (Py_ssize_t)sizeof(double) || to->strides[0] % (Py_ssize_t)sizeof(double))) {
        PyErr_SetString(PyExc_ValueError, "columns whose rows stand a part of a number apart");
    } else if (to) {
        const Py_ssize_t in_step = from->strides[0] / (Py_ssize_t)sizeof(double), out_step = to->strides[0] / (Py_ssize_t)sizeof(double), rows = from->shape[0];
        const double *values = from->buf;
        double ignored;
        tside_fault fault;
        tside_status status;
        Py_ssize_t row = -1;
        memset(&fault, 0, sizeof fault);
        status = roll_columns[which].one(at, 0, &ignored, &fault); /* the roll itself */
        if (status == TSIDE_OK && (row = first_beyond(values, in_step, rows, roll_columns[which].greatest)) >= 0)
            status = roll_columns[which].one(at, values[row * in_step], &ignored, &fault);
        if (status != TSIDE_OK) {
            raise_fault(&fault, (int)row);
        } else {
            Py_BEGIN_ALLOW_THREADS
            roll_columns[which].many(at, values, in_step, to->buf, out_step, rows);
            Py_END_ALLOW_THREADS
            good = 1;
        }
    }
    let_go(all);
    return good ? Py_NewRef_(Py_None) : NULL;
}

#endif
