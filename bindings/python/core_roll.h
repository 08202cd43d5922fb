/* SPDX-License-Identifier: MIT */
/*
 * Columns of the roll: the library's own formulas, which its private header has inline, in loops that a compiler can
 * make wide.
 */
#ifndef CORE_ROLL_H
#define CORE_ROLL_H

#include "shape/roll.h"

typedef tside_status roll_function(const tside_roll *roll, double value, double *answer, tside_fault *fault);

/*
 * The first value that is not from 0 to the greatest, or -1. Numbers that are not below 0 have no sign bit, and stand
 * in the order of their bits, with what is no number above all: so one loop of whole numbers, which can be wide, says
 * whether any is beyond.
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
#define ROLL_COLUMN(NAME, FORMULA) \
    static void NAME(const tside_roll *given, const double *in, Py_ssize_t in_step, double *out, Py_ssize_t out_step, \
                     Py_ssize_t rows) \
    { \
        const tside_roll copy = *given, *roll = &copy; \
        if (in_step == 1 && out_step == 1) \
            for (Py_ssize_t i = 0; i < rows; i++) { \
                const double value = in[i]; \
                out[i] = FORMULA; \
            } \
        else \
            for (Py_ssize_t i = 0; i < rows; i++) { \
                const double value = in[i * in_step]; \
                out[i * out_step] = FORMULA; \
            } \
    }

ROLL_COLUMN(column_of_wraps, tside_i_roll_wraps(roll, value))
ROLL_COLUMN(column_of_taken_up, tside_i_roll_length(roll, value))
ROLL_COLUMN(column_of_diameter, roll->core + 2 * tside_i_roll_te(roll) * value)

static const struct {
    const char *name;
    roll_function *one;
    void (*many)(const tside_roll *given, const double *in, Py_ssize_t in_step, double *out, Py_ssize_t out_step,
                 Py_ssize_t rows);
    double greatest;
} roll_columns[] = {
    {"taken_up", tside_roll_wraps, column_of_wraps, 10000},
    {"wraps", tside_roll_taken_up, column_of_taken_up, 1000},
    {"wraps", tside_roll_diameter, column_of_diameter, 1000},
};

/* Rows between two looks at what the user wants: some milliseconds. */
#define ROLL_BLOCK ((Py_ssize_t)1 << 20)

static Py_ssize_t block_of(Py_ssize_t rows, Py_ssize_t done)
{
    return rows - done < ROLL_BLOCK ? rows - done : ROLL_BLOCK;
}

/* roll_rows(which, roll, in, out): one of the columns above. Nothing is written where a value is refused. */
static PyObject *core_roll_rows(PyObject *self, PyObject *args)
{
    PyObject *roll, *in, *out;
    const Py_buffer *from, *to;
    const void *at;
    columns *all;
    int which, good = 0;
    module_state *state = STATE;
    if (!PyArg_ParseTuple(args, "iOOO", &which, &roll, &in, &out) ||
        !structure_from(state, roll, TSIDE_KIND_ROLL, "roll", &at))
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
    } else if (to && (to->buf != from->buf || to->strides[0] != from->strides[0]) &&
               share_memory(from, to)) { /* a row in its own place is fine */
        PyErr_Format(PyExc_ValueError, "out: has memory in common with other rows of %s", roll_columns[which].name);
    } else if (to) {
        const Py_ssize_t in_step = from->strides[0] / (Py_ssize_t)sizeof(double),
                         out_step = to->strides[0] / (Py_ssize_t)sizeof(double), rows = from->shape[0];
        const double *values = from->buf;
        double ignored;
        tside_fault fault;
        tside_status status;
        Py_ssize_t row = -1;
        memset(&fault, 0, sizeof fault);
        good = 1;
        status = roll_columns[which].one(at, 0, &ignored, &fault); /* the roll itself */
        for (Py_ssize_t done = 0; status == TSIDE_OK && row < 0 && good && done < rows; done += ROLL_BLOCK) {
            row = first_beyond(values + done * in_step, in_step, block_of(rows, done), roll_columns[which].greatest);
            if (row >= 0) {
                row += done;
                status = roll_columns[which].one(at, values[row * in_step], &ignored, &fault);
            }
            good = PyErr_CheckSignals() == 0;
        }
        if (good && status != TSIDE_OK) {
            raise_fault(state, &fault, (int)row);
            good = 0;
        }
        for (Py_ssize_t done = 0; good && done < rows; done += ROLL_BLOCK) {
            Py_BEGIN_ALLOW_THREADS roll_columns[which].many(at, values + done * in_step, in_step,
                                                            (double *)to->buf + done * out_step, out_step,
                                                            block_of(rows, done));
            Py_END_ALLOW_THREADS good = PyErr_CheckSignals() == 0;
        }
    }
    let_go(all);
    return good ? Py_NewRef_(Py_None) : NULL;
}

#endif
