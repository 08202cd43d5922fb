/* SPDX-License-Identifier: MIT */
/* Field tables and trade sizes, and what they say of a structure or a value. */
#ifndef CORE_TABLES_H
#define CORE_TABLES_H

#include "core_read.h"

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
        PyObject *one = Py_BuildValue(
            "sissddNNNNdddsdNiizIniiN", row->name, (int)row->type, row->unit, row->meaning, row->low, row->high,
            PyBool_FromLong(row->low_open), PyBool_FromLong(row->high_open), PyBool_FromLong(row->required),
            PyBool_FromLong(row->optional), row->usual, row->usual_low, row->usual_high, row->basis, row->tolerance,
            choices_of(row), row->type >= TSIDE_GROUP ? (int)row->kind : -1, row->capacity, row->applies_to,
            row->applies_mask, (Py_ssize_t)row->offset, kind, i, PyBool_FromLong(row->film));
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
    module_state *state = STATE;
    if (!PyArg_ParseTuple(args, "is", &kind, &path))
        return NULL;
    if (tside_field_find((tside_kind)kind, path, &place, &fault) != TSIDE_OK) {
        raise_fault(state, &fault, -1);
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

/* Its argument, if it is a structure with a table of the library's. */
static PyObject *with_table(const module_state *state, PyObject *args)
{
    PyObject *object = PyTuple_GetItem(args, 0);
    if (object && (kind_in(state, object) < 0 || kind_in(state, object) >= TSIDE_KIND_COUNT)) {
        PyErr_Format(PyExc_TypeError, "a structure with a table, not %R", (PyObject *)Py_TYPE(object));
        return NULL;
    }
    return object;
}

/* check(structure) */
static PyObject *core_check(PyObject *self, PyObject *args)
{
    PyObject *object = with_table(STATE, args);
    tside_fault fault;
    module_state *state = STATE;
    if (!object)
        return NULL;
    if (tside_check((tside_kind)kind_in(state, object), structure_at(object), &fault) != TSIDE_OK) {
        raise_fault(state, &fault, -1);
        return NULL;
    }
    return Py_NewRef_(Py_None);
}

/* applies(structure, row) */
static PyObject *core_applies(PyObject *self, PyObject *args)
{
    PyObject *object;
    const tside_field *rows;
    int index, count;
    module_state *state = STATE;
    if (!PyArg_ParseTuple(args, "Oi", &object, &index))
        return NULL;
    rows = rows_of(kind_in(state, object), &count);
    if (!rows || index < 0 || index >= count) {
        PyErr_SetString(PyExc_TypeError, "applies: not a structure and a row of its table");
        return NULL;
    }
    return PyBool_FromLong(tside_field_applies(rows + index, structure_at(object)));
}

/* usual_by_choice(structure): the same with the usual values that its choices bring. */
static PyObject *core_usual_by_choice(PyObject *self, PyObject *args)
{
    PyObject *object = with_table(STATE, args), *made;
    module_state *state = STATE;
    if (!object)
        return NULL;
    made = structure_copied(state, kind_in(state, object), structure_at(object));
    if (made)
        tside_usual_by_choice((tside_kind)kind_in(state, object), structure_at(made));
    return made;
}

/* usual_in(structure, hardware): the same with that hardware, and the usual values that it brings. */
static PyObject *core_usual_in(PyObject *self, PyObject *args)
{
    PyObject *object, *made;
    int hardware;
    module_state *state = STATE;
    if (!PyArg_ParseTuple(args, "Oi", &object, &hardware) || !with_table(state, args))
        return NULL;
    made = structure_copied(state, kind_in(state, object), structure_at(object));
    if (made)
        tside_usual_in((tside_kind)kind_in(state, object), (tside_hardware)hardware, structure_at(made));
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

/* number(value, unit, name): a number, or a text with its unit. */
static PyObject *core_number(PyObject *self, PyObject *args)
{
    PyObject *value;
    const char *unit, *name;
    double number;
    return PyArg_ParseTuple(args, "Oss", &value, &unit, &name) && number_from(STATE, value, unit, name, &number)
               ? PyFloat_FromDouble(number)
               : NULL;
}

/*
 * typed(value, kind, row, name): what is typed for a field that is a number or a choice; name: what the field is called
 * in a refusal.
 */
static PyObject *core_typed(PyObject *self, PyObject *args)
{
    PyObject *value;
    const char *name;
    int kind, row, count;
    const tside_field *rows;
    double number;
    if (!PyArg_ParseTuple(args, "Oiis", &value, &kind, &row, &name))
        return NULL;
    rows = rows_of(kind, &count);
    if (row < 0 || row >= count) {
        PyErr_Format(PyExc_IndexError, "typed: row %d of %d", row, count);
        return NULL;
    }
    return typed_from(STATE, value, rows + row, rows[row].unit, name, &number) ? PyFloat_FromDouble(number) : NULL;
}

#endif
