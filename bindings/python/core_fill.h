/* SPDX-License-Identifier: MIT */
/* Structures from keywords, the class from which theirs derive, and what C is told of each class. */
#ifndef CORE_FILL_H
#define CORE_FILL_H

#include "core_read.h"

static int fill(module_state *state, int kind, char *at, PyObject *values, int usual);

static int put_choice(module_state *state, const tside_field *row, char *at, PyObject *value)
{
    double read = 0;
    int whole;
    if (!PyUnicode_Check(value)) {
        if (!whole_from(value, row->name, &whole))
            return 0;
        if (whole < 0 || whole >= row->choice_count)
            return refuse(state, TSIDE_OUT_OF_BOUNDS, TSIDE_NOT_ONE_OF, row->name, "", "", whole,
                          row->choice_count - 1);
        *int_at(at, row->offset) = whole;
        return 1;
    }
    if (!typed_from(state, value, row, row->unit, row->name, &read))
        return 0;
    *int_at(at, row->offset) = (int)read;
    return 1;
}

/*
 * A refusal of a value within a group, or within an element of a list (index not below 0), names its field from outside
 * of it. Returns 0.
 */
static int refused_within(const char *group, Py_ssize_t index)
{
    PyObject *type, *error, *trace, *whole;
    PyErr_Fetch(&type, &error, &trace);
    PyErr_NormalizeException(&type, &error, &trace);
    whole = error && PyObject_HasAttrString(error, "within") ? PyObject_CallMethod(error, "within", "sn", group, index)
                                                             : NULL;
    if (!whole) {
        PyErr_Restore(type, error, trace);
        return 0;
    }
    PyErr_SetObject(type, whole);
    Py_DECREF(whole);
    Py_XDECREF(type);
    Py_XDECREF(error);
    Py_XDECREF(trace);
    return 0;
}

/* A structure, or a dictionary laid over what is there. index: in a list, else -1. */
static int put_structure(module_state *state, int kind, const char *name, Py_ssize_t index, char *at, PyObject *value,
                         int usual)
{
    const void *from;
    if (PyDict_Check(value))
        return fill(state, kind, at, value, usual) || refused_within(name, index);
    if (!structure_from(state, value, kind, name, &from))
        return 0;
    memcpy(at, from, structure_of(kind)->size);
    return 1;
}

static int put_list(module_state *state, const tside_field *row, char *at, PyObject *value)
{
    PyObject *list = PySequence_List(value);
    const Py_ssize_t count = list ? PyList_Size(list) : 0;
    const kind_state *of = kind_of(state, (int)row->kind);
    int good = list && of;
    if (good && count > row->capacity)
        good = refuse(state, TSIDE_OUT_OF_BOUNDS, TSIDE_ABOVE, row->name, "", "", (double)count, row->capacity);
    for (Py_ssize_t i = 0; good && i < count; i++) {
        char *element = at + row->offset + (size_t)i * row->stride;
        memcpy(element, structure_at(of->usual), structure_of((int)row->kind)->size);
        good = put_structure(state, (int)row->kind, row->name, i, element, PyList_GetItem(list, i), 1);
    }
    if (good)
        *int_at(at, row->count_offset) = (int)count;
    Py_XDECREF(list);
    return good;
}

static int put(module_state *state, const tside_field *row, char *at, PyObject *value, int usual)
{
    int *flag = flag_of(row, at);
    if (flag) {
        *flag = value != Py_None;
        if (!*flag)
            return 1;
    }
    switch (row->type) {
    case TSIDE_NUMBER: return typed_from(state, value, row, row->unit, row->name, (double *)(void *)(at + row->offset));
    case TSIDE_COUNT: return whole_from(value, row->name, int_at(at, row->offset));
    case TSIDE_CHOICE: return put_choice(state, row, at, value);
    case TSIDE_GROUP: return put_structure(state, (int)row->kind, row->name, -1, at + row->offset, value, usual);
    case TSIDE_LIST: return put_list(state, row, at, value);
    }
    return 0;
}

/* One keyword; only_choices: 1 passes over what is no choice. Returns 0 where it failed. */
static int put_named(module_state *state, int kind, char *at, PyObject *name, PyObject *value, int usual,
                     int only_choices)
{
    int count;
    const tside_field *row = rows_of(kind, &count);
    PyObject *index = PyDict_GetItemWithError(state->of[kind].names, name);
    if (!index) {
        PyObject *none = PyErr_Occurred() ? NULL : ask_maker(state, "unknown", "(iO)", kind, name);
        Py_XDECREF(none);
        return 0;
    }
    row += PyLong_AsLong(index);
    return (only_choices && row->type != TSIDE_CHOICE) || put(state, row, at, value, usual);
}

static int put_all(module_state *state, int kind, char *at, PyObject *values, int usual, int only_choices)
{
    PyObject *name, *value;
    Py_ssize_t position = 0;
    while (PyDict_Next(values, &position, &name, &value))
        if (!put_named(state, kind, at, name, value, usual, only_choices))
            return 0;
    return 1;
}

/*
 * Where usual values depend on choices, and what is there is usual: choices first, then the usual values that follow
 * from them, then all that is given, for a choice may have followed from another too.
 */
static int fill(module_state *state, int kind, char *at, PyObject *values, int usual)
{
    if (!kind_of(state, kind))
        return 0;
    if (!usual || !state->of[kind].depends)
        return put_all(state, kind, at, values, usual, 0);
    if (!put_all(state, kind, at, values, usual, 1))
        return 0;
    tside_usual_by_choice((tside_kind)kind, at);
    return put_all(state, kind, at, values, usual, 0);
}

static PyObject *filled(module_state *state, int kind, PyObject *base, PyObject *values, int usual)
{
    PyObject *made = structure_copied(state, kind, structure_at(base));
    if (made && values && !fill(state, kind, structure_at(made), values, usual))
        Py_CLEAR(made);
    return made;
}

static struct PyModuleDef definition;

/* The kind of a class, and the state of its module; NULL where it has none. */
static module_state *state_of(PyTypeObject *type, int *kind)
{
    PyObject *number = PyObject_GetAttrString((PyObject *)type, "_kind"),
             *module = number ? PyObject_GetAttrString((PyObject *)type, "_module") : NULL;
    const long given = number ? PyLong_AsLong(number) : -1;
    module_state *state = module && PyModule_Check(module) && PyModule_GetDef(module) == &definition
                              ? PyModule_GetState(module)
                              : NULL;
    *kind = given >= 0 && given < KINDS ? (int)given : -1;
    if (*kind < 0 || !state || !state->of[*kind].usual) {
        state = NULL;
        if (!PyErr_Occurred())
            PyErr_Format(PyExc_TypeError, "%R is not a structure", (PyObject *)type);
    }
    Py_XDECREF(module); /* its classes hold it */
    Py_XDECREF(number);
    return state;
}

/* What only the library makes is never taken from elsewhere, for its functions follow it unchecked. */
static int refuse_made(const module_state *state, int kind, PyObject *type)
{
    PyObject *maker = state->of[kind].maker;
    if (maker)
        PyErr_Format(PyExc_TypeError, "%R is made by %S(), and never by hand", type, maker);
    return maker != NULL;
}

/* Class(**values): values by name, all others usual. */
static PyObject *base_new(PyTypeObject *type, PyObject *args, PyObject *values)
{
    int kind;
    module_state *state = state_of(type, &kind);
    if (!state || refuse_made(state, kind, (PyObject *)type))
        return NULL;
    if (PyTuple_Size(args) > 0) {
        PyErr_Format(PyExc_TypeError, "%R takes its values by name", (PyObject *)type);
        return NULL;
    }
    return filled(state, kind, state->of[kind].usual, values, 1);
}

/* replace(**values): the same with other values. */
static PyObject *base_replace(PyObject *self, PyObject *args, PyObject *values)
{
    module_state *state = ((holder *)(void *)self)->state;
    const int kind = (int)((holder *)(void *)self)->kind;
    if (PyTuple_Size(args) > 0) {
        PyErr_SetString(PyExc_TypeError, "replace() takes its values by name");
        return NULL;
    }
    if (values && PyDict_Size(values) > 0 && refuse_made(state, kind, (PyObject *)Py_TYPE(self)))
        return NULL;
    return filled(state, kind, self, values, 0);
}

/* remade(class, values): as pickling kept it, what only the library makes too. */
static PyObject *core_remade(PyObject *self, PyObject *args)
{
    PyObject *class, *values;
    int kind;
    module_state *state;
    (void)self;
    if (!PyArg_ParseTuple(args, "OO!", &class, &PyDict_Type, &values))
        return NULL;
    state = PyType_Check(class) ? state_of((PyTypeObject *)(void *)class, &kind) : NULL;
    if (!state) {
        if (!PyErr_Occurred())
            PyErr_SetString(PyExc_TypeError, "remade: not a class and its values");
        return NULL;
    }
    return filled(state, kind, state->of[kind].usual, values, 1);
}

static void base_free(PyObject *self)
{
    PyTypeObject *type = Py_TYPE(self);
    freefunc let_go = (freefunc)PyType_GetSlot(type, Py_tp_free);
    let_go(self);
    Py_DECREF(type);
}

/* base(): the class from which those of all structures derive. */
static PyObject *core_base(PyObject *self, PyObject *args)
{
    static PyMethodDef methods[] = {
        {"replace", (PyCFunction)(void (*)(void))base_replace, METH_VARARGS | METH_KEYWORDS,
         "The same with other values; a dictionary is laid over a structure within."},
        {"__replace__", (PyCFunction)(void (*)(void))base_replace, METH_VARARGS | METH_KEYWORDS, "For copy.replace()."},
        {NULL, NULL, 0, NULL},
    };
    static PyType_Slot slots[] = {
        {Py_tp_new, (void *)base_new}, {Py_tp_dealloc, (void *)base_free}, {Py_tp_methods, methods}, {0, NULL}};
    static PyType_Spec spec = {"tunnelside._core.Base", sizeof(holder), 1, Py_TPFLAGS_DEFAULT | Py_TPFLAGS_BASETYPE,
                               slots};
    module_state *state = STATE;
    (void)args;
    if (!state->base_type) {
        PyObject *base = PyType_FromSpec(&spec);
        if (!base || PyObject_SetAttrString(base, "_module", self) < 0) {
            Py_XDECREF(base);
            return NULL;
        }
        state->base_type = (PyTypeObject *)(void *)base;
    }
    return Py_NewRef_((PyObject *)state->base_type);
}

/* --- what C is told of Python's classes --- */

/* Whether two rows share a member: each then applies to its own choices. */
static int depends(int kind)
{
    int count;
    const tside_field *rows = kind < TSIDE_KIND_COUNT ? rows_of(kind, &count) : (count = 0, NULL);
    for (int i = 1; i < count; i++)
        for (int k = 0; k < i; k++)
            if (rows[i].offset == rows[k].offset)
                return 1;
    return 0;
}

static void hold(PyObject **place, PyObject *object)
{
    PyObject *before = *place;
    *place = Py_NewRef_(object);
    Py_XDECREF(before);
}

/* The name of the function that makes a structure, where nobody else does: its class says so. */
static PyObject *settle_maker(kind_state *of)
{
    PyObject *maker = PyObject_GetAttrString(of->class, "_maker");
    if (!maker)
        return NULL;
    if (maker != Py_None)
        hold(&of->maker, maker);
    Py_DECREF(maker);
    return Py_NewRef_(Py_None);
}

/*
 * settle(-1, error class, the module that makes classes), at import, and settle(kind, class, names) as each class is
 * made: so C knows Python's classes.
 */
static PyObject *core_settle(PyObject *self, PyObject *args)
{
    PyObject *class, *other;
    int kind;
    module_state *state = STATE;
    if (!PyArg_ParseTuple(args, "iOO", &kind, &class, &other))
        return NULL;
    if (kind < 0) {
        hold(&state->error_class, class);
        hold(&state->maker, other);
    } else if (structure_of(kind) && PyDict_Check(other)) {
        kind_state *of = state->of + kind;
        PyObject *usual;
        hold(&of->class, class);
        hold(&of->names, other);
        usual = structure_new(state, kind);
        if (!usual)
            return NULL;
        if (kind < TSIDE_KIND_COUNT)
            tside_usual((tside_kind)kind, structure_at(usual));
        hold(&of->usual, usual);
        Py_DECREF(usual);
        of->depends = depends(kind);
        return settle_maker(of);
    }
    return Py_NewRef_(Py_None);
}

#endif
