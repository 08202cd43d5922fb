/* SPDX-License-Identifier: MIT */
/* Many sides: columns of Python's, laid over a side row by row. */
#ifndef CORE_ROWS_H
#define CORE_ROWS_H

#include "core_read.h"

enum { COLUMNS = 256 };

typedef struct columns {
    tside_input input[COLUMNS];
    tside_output output[COLUMNS];
    double repeated[COLUMNS]; /* numbers among the inputs */
    Py_buffer view[2 * COLUMNS + 2];
    const char *name[2 * COLUMNS + 2]; /* of each view */
    int inputs, outputs, views;
    module_state *state;
} columns;

static void let_go(columns *all)
{
    while (all->views > 0)
        PyBuffer_Release(&all->view[--all->views]);
    PyMem_Free(all);
}

/*
 * A column of items of one of some formats, all of one size; of one dimension and any stride, with at least so many
 * rows.
 */
static Py_buffer *view_of(columns *all, PyObject *object, const char *path, const char *formats, size_t size,
                          Py_ssize_t rows, int writable)
{
    Py_buffer *view = &all->view[all->views];
    const char *is;
    if (PyObject_GetBuffer(object, view, PyBUF_FORMAT | PyBUF_STRIDES | (writable ? PyBUF_WRITABLE : 0)) < 0)
        return NULL;
    all->name[all->views++] = path;
    is = view->format ? view->format : "B";
    is += *is == '@' || *is == '=';
    if (view->ndim != 1 || view->itemsize != (Py_ssize_t)size || !is[0] || !strchr(formats, is[0]) || is[1]) {
        PyErr_Format(PyExc_TypeError, "%s: a column of one dimension and format '%c', not of %d and '%s'", path,
                     formats[0], view->ndim, view->format ? view->format : "B");
        return NULL;
    }
    if (view->shape[0] < rows) {
        PyErr_Format(PyExc_ValueError, "%s: %zd rows, not %zd", path, view->shape[0], rows);
        return NULL;
    }
    return view;
}

/* Where a column's memory begins, and how long it is. */
static const char *extent_of(const Py_buffer *view, Py_ssize_t *length)
{
    const Py_ssize_t reach = (view->shape[0] - 1) * view->strides[0];
    *length = (reach < 0 ? -reach : reach) + view->itemsize;
    return (const char *)view->buf + (reach < 0 ? reach : 0);
}

/*
 * Whether two columns have memory in common. Columns of one table stand between each other's rows, equally far apart:
 * they have not.
 */
static int share_memory(const Py_buffer *a, const Py_buffer *b)
{
    Py_ssize_t length_a, length_b, step, apart;
    const char *from_a, *from_b;
    if (!a->shape[0] || !b->shape[0])
        return 0;
    from_a = extent_of(a, &length_a);
    from_b = extent_of(b, &length_b);
    if (from_a >= from_b + length_b || from_b >= from_a + length_a)
        return 0;
    step = a->strides[0] < 0 ? -a->strides[0] : a->strides[0];
    if (!step || (step != b->strides[0] && step != -b->strides[0]))
        return 1;
    apart = ((from_a - from_b) % step + step) % step;
    return apart < b->itemsize || step - apart < a->itemsize;
}

/* The first views are written to: what is written must be nothing else's. */
static int stand_apart(const columns *all, int written)
{
    for (int i = 0; i < written; i++)
        for (int k = i + 1; k < all->views; k++)
            if (share_memory(&all->view[i], &all->view[k])) {
                PyErr_Format(PyExc_ValueError, "out: %s has memory in common with %s", all->name[i], all->name[k]);
                return 0;
            }
    return 1;
}

static int place_of(module_state *state, tside_kind kind, const char *path, tside_place *place)
{
    tside_fault fault;
    if (tside_field_find(kind, path, place, &fault) != TSIDE_OK) {
        raise_fault(state, &fault, -1);
        return 0;
    }
    return place->field->type < TSIDE_GROUP || refuse(state, TSIDE_NOT_FOUND, TSIDE_NO_RELATION, path, "",
                                                      "a column must be a number, a count or a choice", 0, 0);
}

static int take_input(columns *all, PyObject *pair, Py_ssize_t first, Py_ssize_t last)
{
    const char *path;
    PyObject *column;
    tside_input *input = &all->input[all->inputs];
    if (!PyArg_ParseTuple(pair, "sO", &path, &column) || !place_of(all->state, TSIDE_KIND_SIDE, path, &input->place))
        return 0;
    if (PyFloat_Check(column)) {
        all->repeated[all->inputs] = PyFloat_AsDouble(column);
        input->data = &all->repeated[all->inputs];
        input->stride = 0;
    } else {
        const Py_buffer *view = view_of(all, column, path, "d", sizeof(double), last, 0);
        if (!view)
            return 0;
        input->stride = view->strides[0];
        input->data = (const double *)(const void *)((const char *)view->buf + first * input->stride);
    }
    all->inputs++;
    return 1;
}

static int take_output(columns *all, PyObject *pair, Py_ssize_t first, Py_ssize_t last)
{
    const char *path;
    PyObject *column;
    const Py_buffer *view;
    tside_output *output = &all->output[all->outputs];
    if (!PyArg_ParseTuple(pair, "sO", &path, &column) || !place_of(all->state, TSIDE_KIND_PLAN, path, &output->place))
        return 0;
    view = view_of(all, column, path, "d", sizeof(double), last, 1);
    if (!view)
        return 0;
    output->stride = view->strides[0];
    output->data = (double *)(void *)((char *)view->buf + first * output->stride);
    all->outputs++;
    return 1;
}

static int take_all(columns *all, PyObject *pairs, int (*take)(columns *, PyObject *, Py_ssize_t, Py_ssize_t),
                    Py_ssize_t first, Py_ssize_t last)
{
    const Py_ssize_t count = PyTuple_Check(pairs) ? PyTuple_Size(pairs) : COLUMNS + 1;
    if (count > COLUMNS) {
        PyErr_Format(PyExc_ValueError, "more than %d columns", COLUMNS);
        return 0;
    }
    for (Py_ssize_t i = 0; i < count; i++)
        if (!take(all, PyTuple_GetItem(pairs, i), first, last))
            return 0;
    return 1;
}

/* What a row does not have is no number; a reused column must not show the batch before. */
static void blank(const columns *all, int rows)
{
    for (int i = 0; i < all->outputs; i++)
        for (int row = 0; row < rows; row++)
            *(double *)(void *)((char *)all->output[i].data + row * all->output[i].stride) = NAN;
}

/* Goes on to later rows. */
static void move_on(columns *all, int rows)
{
    for (int i = 0; i < all->inputs; i++)
        all->input[i].data = (const double *)(const void *)((const char *)all->input[i].data +
                                                            rows * all->input[i].stride);
    for (int i = 0; i < all->outputs; i++)
        all->output[i].data = (double *)(void *)((char *)all->output[i].data + rows * all->output[i].stride);
}

/* Rows between two looks at what the user wants: some milliseconds. */
enum { BLOCK = 64 };

/*
 * Plans rows, without the lock of the interpreter, until they are done or a signal's handler raises something: then
 * returns 0. The fault: of the first bad row, index its number, from the first.
 */
static int plan_blocks(columns *all, const tside_side *side, Py_ssize_t rows, int *statuses,
                       unsigned long long *findings, tside_fault *fault)
{
    tside_fault here;
    fault->status = TSIDE_OK;
    for (Py_ssize_t done = 0; done < rows; done += BLOCK) {
        const int block = (int)(rows - done < BLOCK ? rows - done : BLOCK);
        tside_status status;
        memset(&here, 0, sizeof here);
        Py_BEGIN_ALLOW_THREADS blank(all, block);
        status = tside_plan_sides(side, block, all->input, all->inputs, all->output, all->outputs, statuses + done,
                                  findings ? findings + done : NULL, &here);
        move_on(all, block);
        Py_END_ALLOW_THREADS if (status != TSIDE_OK && fault->status == TSIDE_OK)
        {
            *fault = here;
            fault->index += (int)done;
        }
        if (PyErr_CheckSignals() < 0)
            return 0;
    }
    return 1;
}

/* The error of a fault in a row, not raised. */
static PyObject *error_of(module_state *state, tside_fault *fault, int row)
{
    PyObject *type, *error, *trace;
    fault->index = -1;
    raise_fault(state, fault, row);
    PyErr_Fetch(&type, &error, &trace);
    PyErr_NormalizeException(&type, &error, &trace);
    Py_XDECREF(type);
    Py_XDECREF(trace);
    return error;
}

static int is_contiguous(const Py_buffer *view)
{
    return view->strides[0] == view->itemsize;
}

/*
 * plan_rows(side, first, last, inputs, outputs, statuses, findings or None): rows first to last - 1. Returns None, or
 * the error of the first bad row, which stops nothing.
 */
static PyObject *core_plan_rows(PyObject *self, PyObject *args)
{
    PyObject *base, *inputs, *outputs, *statuses, *findings, *answer = NULL;
    Py_ssize_t first, last;
    const Py_buffer *status_view, *finding_view;
    columns *all;
    tside_fault fault;
    module_state *state = STATE;
    if (!PyArg_ParseTuple(args, "OnnOOOO", &base, &first, &last, &inputs, &outputs, &statuses, &findings))
        return NULL;
    if (kind_in(state, base) != TSIDE_KIND_SIDE || first < 0 || last < first || last - first > INT_MAX) {
        PyErr_SetString(PyExc_TypeError, "plan_rows: not a side and a range of rows");
        return NULL;
    }
    all = PyMem_Calloc(1, sizeof *all);
    if (!all)
        return PyErr_NoMemory();
    all->state = state;
    status_view = view_of(all, statuses, "status", "il", sizeof(int), last, 1);
    finding_view = status_view && findings != Py_None
                       ? view_of(all, findings, "findings", "QL", sizeof(unsigned long long), last, 1)
                       : NULL;
    if (PyErr_Occurred())
        ; /* what was raised stands */
    else if (!is_contiguous(status_view) || (finding_view && !is_contiguous(finding_view)))
        PyErr_SetString(PyExc_ValueError, "status and findings must be contiguous");
    else if (take_all(all, outputs, take_output, first, last) && take_all(all, inputs, take_input, first, last) &&
             stand_apart(all, 1 + (finding_view != NULL) + all->outputs) &&
             plan_blocks(all, structure_at(base), last - first, (int *)status_view->buf + first,
                         finding_view ? (unsigned long long *)finding_view->buf + first : NULL, &fault))
        answer = fault.status == TSIDE_OK ? Py_NewRef_(Py_None) : error_of(state, &fault, (int)first + fault.index);
    let_go(all);
    return answer;
}

#endif
