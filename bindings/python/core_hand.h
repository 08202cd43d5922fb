/* SPDX-License-Identifier: MIT */
/* The functions of the extension module that are written by hand: structures from keywords and back, field tables, trade sizes, many sides. */
#ifndef CORE_HAND_H
#define CORE_HAND_H

#include <stddef.h>

static PyObject *names_of[KINDS];  /* of each structure: a dictionary from a field's name in Python to its row */
static PyObject *usual_of[KINDS];  /* of each structure: its usual values */
static PyObject *unknown_name;     /* raises the error for a name that no field has */

static const structure *structure_of(int kind)
{
    return kind >= 0 && kind < KINDS && structures[kind].name ? structures + kind : NULL;
}

static int kind_named(const char *name)
{
    int kind = 0;
    while (kind < KINDS - 1 && (!structures[kind].name || strcmp(structures[kind].name, name) != 0))
        kind++;
    return kind;
}

static int *int_at(char *structure, size_t offset)
{
    return (int *)(void *)(structure + offset);
}

/* The int that says whether the row is there, or NULL: an optional number's, or that of a group that applies while a flag is set. */
static int *flag_of(const tside_field *row, char *structure)
{
    const size_t length = row->applies_to ? strlen(row->applies_to) : 0;
    if (row->optional)
        return int_at(structure, row->given_offset);
    if (row->type == TSIDE_GROUP && length > 6 && !strcmp(row->applies_to + length - 6, "_given"))
        return int_at(structure, row->applies_offset);
    return NULL;
}

/* --- reading a field --- */

/* get(bytes, row): its value; of a group bytes, of a list a list of bytes, of what is absent None. */
static PyObject *core_get(PyObject *self, PyObject *args)
{
    PyObject *bytes = PyTuple_GetItem(args, 0), *index = PyTuple_GetItem(args, 1);
    const tside_field *row;
    char *at;
    int kind, count, *flag;
    long i;
    (void)self;
    if (!bytes || !index)
        return NULL;
    kind = kind_in(bytes);
    row = rows_of(kind, &count);
    i = PyLong_AsLong(index);
    if (!row || i < 0 || i >= count) {
        PyErr_SetString(PyExc_TypeError, "get: not a structure's bytes and a row of its table");
        return NULL;
    }
    row += i;
    at = structure_in_bytes(bytes);
    flag = flag_of(row, at);
    if (flag && !*flag)
        return Py_NewRef_(Py_None);
    switch (row->type) {
    case TSIDE_NUMBER: return PyFloat_FromDouble(*(double *)(void *)(at + row->offset));
    case TSIDE_COUNT:
    case TSIDE_CHOICE: return PyLong_FromLong(*int_at(at, row->offset));
    case TSIDE_GROUP: return structure_copied((int)row->kind, at + row->offset);
    case TSIDE_LIST: break;
    }
    count = *int_at(at, row->count_offset);
    return list_of((int)row->kind, at + row->offset, row->stride, count < 0 ? 0 : count > row->capacity ? row->capacity : count);
}

/* --- filling a structure from keywords --- */

static int fill(int kind, char *at, PyObject *values, int usual);

static int put_choice(const tside_field *row, char *at, PyObject *value)
{
    char known[TSIDE_PATH_SIZE * 4] = "";
    int whole;
    if (!PyUnicode_Check(value)) {
        if (!whole_from(value, row->name, &whole))
            return 0;
        if (whole < 0 || whole >= row->choice_count)
            return refuse(TSIDE_OUT_OF_BOUNDS, TSIDE_NOT_ONE_OF, row->name, "", "", whole, row->choice_count - 1);
        *int_at(at, row->offset) = whole;
        return 1;
    }
    for (int i = 0; i < row->choice_count; i++) {
        if (!PyUnicode_CompareWithASCIIString(value, row->choices[i])) {
            *int_at(at, row->offset) = i;
            return 1;
        }
        if (strlen(known) + strlen(row->choices[i]) + 3 < sizeof known)
            strcat(strcat(known, i ? ", " : ""), row->choices[i]);
    }
    return refuse(TSIDE_NOT_FOUND, TSIDE_NO_RELATION, row->name, known, "no such choice", 0, 0);
}

/* A structure, or a dictionary laid over what is there. */
static int put_structure(int kind, const char *name, char *at, PyObject *value, int usual)
{
    PyObject *held;
    const void *from;
    if (PyDict_Check(value))
        return fill(kind, at, value, usual);
    if (structure_from(value, kind, name, &held, &from))
        memcpy(at, from, structure_of(kind)->size);
    Py_XDECREF(held);
    return !PyErr_Occurred();
}

static int put_list(const tside_field *row, char *at, PyObject *value)
{
    PyObject *list = PySequence_List(value);
    const Py_ssize_t count = list ? PyList_Size(list) : 0;
    int good = list != NULL;
    if (count > row->capacity)
        good = refuse(TSIDE_OUT_OF_BOUNDS, TSIDE_ABOVE, row->name, "", "", (double)count, row->capacity);
    for (Py_ssize_t i = 0; good && i < count; i++) {
        char *element = at + row->offset + (size_t)i * row->stride;
        memcpy(element, structure_in_bytes(usual_of[row->kind]), structure_of((int)row->kind)->size);
        good = put_structure((int)row->kind, row->name, element, PyList_GetItem(list, i), 1);
    }
    if (good)
        *int_at(at, row->count_offset) = (int)count;
    Py_XDECREF(list);
    return good;
}

static int put(const tside_field *row, char *at, PyObject *value, int usual)
{
    int *flag = flag_of(row, at);
    if (flag) {
        *flag = value != Py_None;
        if (!*flag)
            return 1;
    }
    switch (row->type) {
    case TSIDE_NUMBER: return number_from(value, row->unit, row->name, (double *)(void *)(at + row->offset));
    case TSIDE_COUNT: return whole_from(value, row->name, int_at(at, row->offset));
    case TSIDE_CHOICE: return put_choice(row, at, value);
    case TSIDE_GROUP: return put_structure((int)row->kind, row->name, at + row->offset, value, usual);
    case TSIDE_LIST: return put_list(row, at, value);
    }
    return 0;
}

/* Choices first, then the usual values that follow from them where what is there is usual, then the rest. */
static int fill(int kind, char *at, PyObject *values, int usual)
{
    int count, chosen = 0;
    const tside_field *rows = rows_of(kind, &count);
    for (int choices = 1; choices >= 0; choices--) {
        PyObject *name, *value;
        Py_ssize_t position = 0;
        while (PyDict_Next(values, &position, &name, &value)) {
            PyObject *index = PyDict_GetItemWithError(names_of[kind], name);
            const tside_field *row;
            if (!index) {
                PyObject *none = PyErr_Occurred() ? NULL : PyObject_CallFunction(unknown_name, "iO", kind, name);
                Py_XDECREF(none);
                return 0;
            }
            row = rows + PyLong_AsLong(index);
            if ((row->type == TSIDE_CHOICE) != choices)
                continue;
            chosen |= choices;
            if (!put(row, at, value, usual))
                return 0;
        }
        if (choices && chosen && usual && kind < TSIDE_KIND_COUNT)
            tside_usual_by_choice((tside_kind)kind, at);
    }
    return 1;
}

/* fill(kind, bytes or None, dictionary): a new structure from a given one, or from the usual values. */
static PyObject *core_fill(PyObject *self, PyObject *args)
{
    PyObject *base, *values, *bytes;
    int kind;
    (void)self;
    if (!PyArg_ParseTuple(args, "iOO", &kind, &base, &values))
        return NULL;
    if (!structure_of(kind) || !usual_of[kind] || !PyDict_Check(values) || (base != Py_None && kind_in(base) != kind)) {
        PyErr_SetString(PyExc_TypeError, "fill: not a kind, bytes of it and a dictionary");
        return NULL;
    }
    bytes = structure_copied(kind, structure_in_bytes(base == Py_None ? usual_of[kind] : base));
    if (bytes && !fill(kind, structure_in_bytes(bytes), values, base == Py_None))
        Py_CLEAR(bytes);
    return bytes;
}

/* --- tables --- */

static PyObject *choices_of(const tside_field *row)
{
    PyObject *choices = PyTuple_New(row->choice_count);
    for (int i = 0; choices && i < row->choice_count; i++)
        PyTuple_SetItem(choices, i, PyUnicode_FromString(row->choices[i]));
    return choices;
}

/* fields(kind): the rows of its table. */
static PyObject *core_fields(PyObject *self, PyObject *args)
{
    int kind, count;
    const tside_field *row;
    PyObject *list;
    (void)self;
    if (!PyArg_ParseTuple(args, "i", &kind))
        return NULL;
    row = rows_of(kind, &count);
    list = PyList_New(count);
    for (int i = 0; list && i < count; i++, row++) {
        PyObject *one = Py_BuildValue("sissddNNNNdddsdNiizIn", row->name, (int)row->type, row->unit, row->meaning, row->low, row->high, PyBool_FromLong(row->low_open),
                                      PyBool_FromLong(row->high_open), PyBool_FromLong(row->required), PyBool_FromLong(row->optional), row->usual, row->usual_low,
                                      row->usual_high, row->basis, row->tolerance, choices_of(row), row->type >= TSIDE_GROUP ? (int)row->kind : -1, row->capacity,
                                      row->applies_to, row->applies_mask, (Py_ssize_t)row->offset);
        if (!one) {
            Py_DECREF(list);
            return NULL;
        }
        PyList_SetItem(list, i, one);
    }
    return list;
}

/* field_at(kind, path): kind and row of the field to which a path leads, and its offset. */
static PyObject *core_field_at(PyObject *self, PyObject *args)
{
    const char *path;
    int kind, count;
    tside_place place;
    tside_fault fault;
    (void)self;
    if (!PyArg_ParseTuple(args, "is", &kind, &path))
        return NULL;
    if (tside_field_find((tside_kind)kind, path, &place, &fault) != TSIDE_OK) {
        raise_fault(&fault, -1);
        return NULL;
    }
    for (kind = 0; kind < TSIDE_KIND_COUNT; kind++) {
        const tside_field *rows = tside_fields((tside_kind)kind, &count);
        if (place.field >= rows && place.field < rows + count)
            return Py_BuildValue("iin", kind, (int)(place.field - rows), (Py_ssize_t)place.offset);
    }
    return Py_NewRef_(Py_None);
}

/* kinds(): the names of all structures in C, and their numbers. */
static PyObject *core_kinds(PyObject *self, PyObject *args)
{
    PyObject *kinds = PyDict_New();
    (void)self;
    (void)args;
    for (int kind = 0; kinds && kind < KINDS; kind++) {
        PyObject *number = structures[kind].name ? PyLong_FromLong(kind) : NULL;
        if (number)
            PyDict_SetItemString(kinds, structures[kind].name, number);
        Py_XDECREF(number);
    }
    return kinds;
}

/* check(bytes) */
static PyObject *core_check(PyObject *self, PyObject *args)
{
    PyObject *bytes = PyTuple_GetItem(args, 0);
    tside_fault fault;
    int kind;
    (void)self;
    if (!bytes)
        return NULL;
    kind = kind_in(bytes);
    if (tside_check((tside_kind)kind, structure_in_bytes(bytes), &fault) != TSIDE_OK) {
        raise_fault(&fault, -1);
        return NULL;
    }
    return Py_NewRef_(Py_None);
}

/* applies(bytes, row) */
static PyObject *core_applies(PyObject *self, PyObject *args)
{
    PyObject *bytes;
    const tside_field *rows;
    int index, count;
    (void)self;
    if (!PyArg_ParseTuple(args, "Oi", &bytes, &index))
        return NULL;
    rows = rows_of(kind_in(bytes), &count);
    if (!rows || index < 0 || index >= count) {
        PyErr_SetString(PyExc_TypeError, "applies: not a structure's bytes and a row of its table");
        return NULL;
    }
    return PyBool_FromLong(tside_field_applies(rows + index, structure_in_bytes(bytes)));
}

/* usual_by_choice(bytes): the same with the usual values that its choices bring. */
static PyObject *core_usual_by_choice(PyObject *self, PyObject *args)
{
    PyObject *bytes = PyTuple_GetItem(args, 0), *made;
    int kind;
    (void)self;
    if (!bytes)
        return NULL;
    kind = kind_in(bytes);
    if (kind < 0 || kind >= TSIDE_KIND_COUNT) {
        PyErr_SetString(PyExc_TypeError, "usual_by_choice: not a structure with a table");
        return NULL;
    }
    made = structure_copied(kind, structure_in_bytes(bytes));
    if (made)
        tside_usual_by_choice((tside_kind)kind, structure_in_bytes(made));
    return made;
}

/* trades(of_walls): family, name and value of each. */
static PyObject *core_trades(PyObject *self, PyObject *args)
{
    int of_walls, count;
    const tside_trade *trade;
    PyObject *list;
    (void)self;
    if (!PyArg_ParseTuple(args, "p", &of_walls))
        return NULL;
    trade = tside_trades(of_walls, &count);
    list = PyList_New(count);
    for (int i = 0; list && i < count; i++)
        PyList_SetItem(list, i, Py_BuildValue("ssd", trade[i].family, trade[i].name, trade[i].value));
    return list;
}

/* set_error(kind or -1, object, object): at import, the error class and what raises for an unknown name; or a structure's names. */
static PyObject *core_set_error(PyObject *self, PyObject *args)
{
    PyObject *one, *other;
    int kind;
    (void)self;
    if (!PyArg_ParseTuple(args, "iOO", &kind, &one, &other))
        return NULL;
    if (kind < 0) {
        Py_XDECREF(error_class);
        Py_XDECREF(unknown_name);
        Py_XDECREF(data_name);
        error_class = Py_NewRef_(one);
        unknown_name = Py_NewRef_(other);
        data_name = PyUnicode_InternFromString("_data");
    } else if (structure_of(kind) && PyDict_Check(one)) {
        PyObject *usual = structure_new(kind);
        if (!usual)
            return NULL;
        if (kind < TSIDE_KIND_COUNT)
            tside_usual((tside_kind)kind, structure_in_bytes(usual));
        Py_XDECREF(names_of[kind]);
        Py_XDECREF(usual_of[kind]);
        names_of[kind] = Py_NewRef_(one);
        usual_of[kind] = usual;
    }
    return Py_NewRef_(Py_None);
}

/* --- many sides --- */

enum { COLUMNS = 256 };

typedef struct columns {
    tside_input input[COLUMNS];
    tside_output output[COLUMNS];
    double repeated[COLUMNS]; /* numbers among the inputs */
    Py_buffer view[2 * COLUMNS + 2];
    int inputs, outputs, views;
} columns;

static void let_go(columns *all)
{
    while (all->views > 0)
        PyBuffer_Release(&all->view[--all->views]);
    PyMem_Free(all);
}

/* A column of items of one format, one dimension and any stride, with at least so many rows. */
static Py_buffer *view_of(columns *all, PyObject *object, const char *path, char format, size_t size, Py_ssize_t rows, int writable)
{
    Py_buffer *view = &all->view[all->views];
    const char *is;
    if (PyObject_GetBuffer(object, view, PyBUF_FORMAT | PyBUF_STRIDES | (writable ? PyBUF_WRITABLE : 0)) < 0)
        return NULL;
    all->views++;
    is = view->format ? view->format : "B";
    is += *is == '@' || *is == '=';
    if (view->ndim != 1 || view->itemsize != (Py_ssize_t)size || is[0] != format || is[1]) {
        PyErr_Format(PyExc_TypeError, "%s: a column of one dimension and format '%c', not of %d and '%s'", path, format, view->ndim, view->format ? view->format : "B");
        return NULL;
    }
    if (view->shape[0] < rows) {
        PyErr_Format(PyExc_ValueError, "%s: %zd rows, not %zd", path, view->shape[0], rows);
        return NULL;
    }
    return view;
}

static int place_of(tside_kind kind, const char *path, tside_place *place)
{
    tside_fault fault;
    if (tside_field_find(kind, path, place, &fault) == TSIDE_OK)
        return 1;
    raise_fault(&fault, -1);
    return 0;
}

static int take_input(columns *all, PyObject *pair, Py_ssize_t first, Py_ssize_t last)
{
    const char *path;
    PyObject *column;
    tside_input *input = &all->input[all->inputs];
    if (!PyArg_ParseTuple(pair, "sO", &path, &column) || !place_of(TSIDE_KIND_SIDE, path, &input->place))
        return 0;
    if (PyFloat_Check(column)) {
        all->repeated[all->inputs] = PyFloat_AsDouble(column);
        input->data = &all->repeated[all->inputs];
        input->stride = 0;
    } else {
        const Py_buffer *view = view_of(all, column, path, 'd', sizeof(double), last, 0);
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
    if (!PyArg_ParseTuple(pair, "sO", &path, &column) || !place_of(TSIDE_KIND_PLAN, path, &output->place))
        return 0;
    view = view_of(all, column, path, 'd', sizeof(double), last, 1);
    if (!view)
        return 0;
    output->stride = view->strides[0];
    output->data = (double *)(void *)((char *)view->buf + first * output->stride);
    all->outputs++;
    return 1;
}

static int take_all(columns *all, PyObject *pairs, int (*take)(columns *, PyObject *, Py_ssize_t, Py_ssize_t), Py_ssize_t first, Py_ssize_t last)
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

/*
 * plan_rows(side, first, last, inputs, outputs, statuses, findings): rows first to last - 1 of the columns, without the lock of the interpreter.
 * Returns None, or the error of the first bad row, which stops nothing.
 */
static PyObject *core_plan_rows(PyObject *self, PyObject *args)
{
    PyObject *base, *inputs, *outputs, *statuses, *findings, *answer = NULL;
    Py_ssize_t first, last;
    const Py_buffer *status_view, *finding_view;
    columns *all;
    tside_fault fault;
    (void)self;
    if (!PyArg_ParseTuple(args, "OnnOOOO", &base, &first, &last, &inputs, &outputs, &statuses, &findings))
        return NULL;
    if (kind_in(base) != TSIDE_KIND_SIDE || first < 0 || last < first || last - first > INT_MAX) {
        PyErr_SetString(PyExc_TypeError, "plan_rows: not a side's bytes and a range of rows");
        return NULL;
    }
    all = PyMem_Calloc(1, sizeof *all);
    if (!all)
        return PyErr_NoMemory();
    status_view = view_of(all, statuses, "status", 'i', sizeof(int), last, 1);
    finding_view = status_view ? view_of(all, findings, "findings", 'Q', sizeof(unsigned long long), last, 1) : NULL;
    if (finding_view && (status_view->strides[0] != (Py_ssize_t)sizeof(int) || finding_view->strides[0] != (Py_ssize_t)sizeof(unsigned long long)))
        PyErr_SetString(PyExc_ValueError, "status and findings must be contiguous");
    else if (finding_view && take_all(all, inputs, take_input, first, last) && take_all(all, outputs, take_output, first, last)) {
        const int rows = (int)(last - first);
        const void *side = structure_in_bytes(base);
        tside_status status;
        memset(&fault, 0, sizeof fault);
        Py_BEGIN_ALLOW_THREADS
        blank(all, rows);
        status = tside_plan_sides(side, rows, all->input, all->inputs, all->output, all->outputs, (int *)status_view->buf + first,
                                  (unsigned long long *)finding_view->buf + first, &fault);
        Py_END_ALLOW_THREADS
        if (status == TSIDE_OK) {
            answer = Py_NewRef_(Py_None);
        } else {
            PyObject *type, *trace;
            const int whose = fault.index;
            fault.index = -1;
            raise_fault(&fault, (int)(first + whose));
            PyErr_Fetch(&type, &answer, &trace);
            PyErr_NormalizeException(&type, &answer, &trace);
            Py_XDECREF(type);
            Py_XDECREF(trace);
        }
    }
    let_go(all);
    return answer;
}

#endif
