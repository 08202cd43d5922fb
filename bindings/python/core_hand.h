/* SPDX-License-Identifier: MIT */
/*
 * The functions of the extension module that are written by hand: structures from keywords and back, field tables,
 * trade sizes, many sides.
 */
#ifndef CORE_HAND_H
#define CORE_HAND_H

#include <stddef.h>
#include <time.h>

#include "cutting/stock.h"

static const c_structure *structure_of(int kind)
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

/*
 * The int that says whether the row is there, or NULL: an optional number's, or that of a group that applies while a
 * flag is set.
 */
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

/* An attribute: which row it reads, and of a choice its enumeration and, once one was read, that one's members. */
typedef struct reader {
    PyGetSetDef definition;
    const tside_field *row;
    const char *choice;
    PyObject *members;
} reader;

/* The members of its enumeration, which the module keeps. */
static PyObject *members_of(module_state *state, reader *of)
{
    if (!of->members) {
        PyObject *members = ask_maker(state, "members_of", "(s)", of->choice);
        if (members && PyList_Append(state->kept, members) == 0)
            of->members = members;
        Py_XDECREF(members);
    }
    return of->members;
}

static PyObject *read_choice(module_state *state, reader *of, int value)
{
    PyObject *members = members_of(state, of), *member = members ? PyTuple_GetItem(members, value) : NULL;
    Py_XINCREF(member);
    return member;
}

static PyObject *read_field(PyObject *self, void *closure)
{
    reader *of = closure;
    const tside_field *row = of->row;
    module_state *state = ((holder *)(void *)self)->state;
    char *at = structure_at(self);
    const int *flag = flag_of(row, at);
    int count;
    if (flag && !*flag)
        return Py_NewRef_(Py_None);
    switch (row->type) {
    case TSIDE_NUMBER: return PyFloat_FromDouble(*(double *)(void *)(at + row->offset));
    case TSIDE_COUNT: return PyLong_FromLong(*int_at(at, row->offset));
    case TSIDE_CHOICE: return read_choice(state, of, *int_at(at, row->offset));
    case TSIDE_GROUP: return structure_copied(state, (int)row->kind, at + row->offset);
    case TSIDE_LIST: break;
    }
    count = *int_at(at, row->count_offset);
    return tuple_of(state, (int)row->kind, at + row->offset, row->stride,
                    count < 0               ? 0
                    : count > row->capacity ? row->capacity
                                            : count);
}

static void let_reader_go(PyObject *capsule)
{
    PyMem_Free(PyCapsule_GetPointer(capsule, NULL));
}

/* Room for a reader and its texts, which the module keeps. */
static reader *keep_reader(module_state *state, size_t texts)
{
    reader *of = PyMem_Calloc(1, sizeof *of + texts);
    PyObject *capsule = of ? PyCapsule_New(of, NULL, let_reader_go) : PyErr_NoMemory();
    int good;
    if (!capsule) {
        PyMem_Free(of);
        return NULL;
    }
    good = PyList_Append(state->kept, capsule) == 0;
    Py_DECREF(capsule);
    return good ? of : NULL;
}

/* Copies a text to where there is room; what follows it comes next. */
static const char *keep_text(char **room, const char *text)
{
    char *here = strcpy(*room, text);
    *room += strlen(text) + 1;
    return here;
}

/* describe(class, kind, row, name, doc, enumeration or None): the attribute that reads a field. */
static PyObject *core_describe(PyObject *self, PyObject *args)
{
    PyObject *class;
    const char *name, *doc, *choice;
    const tside_field *rows;
    int kind, index, count;
    reader *of;
    char *room;
    module_state *state = STATE;
    if (!PyArg_ParseTuple(args, "Oiissz", &class, &kind, &index, &name, &doc, &choice))
        return NULL;
    rows = rows_of(kind, &count);
    if (!rows || index < 0 || index >= count || !PyType_Check(class) ||
        !PyType_IsSubtype((PyTypeObject *)(void *)class, state->base_type) ||
        (rows[index].type == TSIDE_CHOICE && !choice)) {
        PyErr_SetString(PyExc_TypeError,
                        "describe: not a class, a row of its table, and the enumeration of its choice");
        return NULL;
    }
    choice = choice ? choice : "";
    of = keep_reader(state, strlen(name) + strlen(doc) + strlen(choice) + 3);
    if (!of)
        return NULL;
    room = (char *)(of + 1);
    of->row = rows + index;
    of->choice = keep_text(&room, choice);
    name = keep_text(&room, name);
    of->definition = (PyGetSetDef){name, read_field, NULL, keep_text(&room, doc), of};
    return PyDescr_NewGetSet((PyTypeObject *)(void *)class, &of->definition);
}

/* --- filling a structure from keywords --- */

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

/* One keyword; only_choices: 1 choices, 0 all else, -1 whatever it is. Returns 0 where it failed. */
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

/* --- many sides --- */

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

/* --- the cut plan --- */

static PyObject *taken_of(const int *taken, int sticks, int cuts)
{
    PyObject *all = PyTuple_New(sticks);
    for (int i = 0; all && i < sticks; i++) {
        PyObject *one = PyTuple_New(cuts);
        for (int j = 0; one && j < cuts; j++)
            PyTuple_SetItem(one, j, PyLong_FromLong(taken[i * cuts + j]));
        if (!one)
            Py_CLEAR(all);
        else
            PyTuple_SetItem(all, i, one);
    }
    return all;
}

/*
 * The lock of the interpreter, let go; when signals were last looked at; and whether what handles them has raised
 * something.
 */
typedef struct unlocked {
    PyThreadState *thread;
    clock_t looked;
    int stopped;
} unlocked;

/* Asked every millisecond; taking the lock each time would wait for other threads too often. */
static int go_on(void *context)
{
    unlocked *lock = context;
    if (clock() - lock->looked < CLOCKS_PER_SEC / 50)
        return 1;
    PyEval_RestoreThread(lock->thread);
    lock->stopped = PyErr_CheckSignals() < 0;
    lock->thread = PyEval_SaveThread();
    lock->looked = clock();
    return !lock->stopped;
}

/*
 * stock_plan(stock, cuts, node_limit): the plan, its sticks, and for each of these the pieces of each cut. Others may
 * go on while it searches.
 */
static PyObject *core_stock_plan(PyObject *self, PyObject *args)
{
    PyObject *stock_object, *cut_objects, *answer = NULL;
    const void *stock;
    void *cuts = NULL, *work = NULL;
    tside_stick *sticks = NULL;
    tside_cut_plan plan;
    tside_fault fault;
    tside_status status = TSIDE_TOO_SMALL;
    int *taken = NULL;
    int cut_count, node_limit, count = 64, capacity = 0;
    size_t work_size;
    unlocked lock = {NULL, clock(), 0};
    module_state *state = STATE;
    if (!PyArg_ParseTuple(args, "OOi", &stock_object, &cut_objects, &node_limit) ||
        !structure_from(state, stock_object, TSIDE_KIND_STOCK, "stock", &stock) ||
        !list_from(state, cut_objects, TSIDE_KIND_CUT, sizeof(tside_cut), "cuts", &cuts, &cut_count)) {
        PyMem_Free(cuts);
        return NULL;
    }
    work_size = tside_stock_work(cut_count);
    work = PyMem_Malloc(work_size);
    memset(&plan, 0, sizeof plan);
    memset(&fault, 0, sizeof fault);
    while (work && status == TSIDE_TOO_SMALL && count > capacity && !lock.stopped) {
        capacity = count;
        PyMem_Free(sticks);
        PyMem_Free(taken);
        sticks = PyMem_Calloc((size_t)capacity, sizeof *sticks);
        taken = PyMem_Calloc((size_t)capacity * (size_t)(cut_count + 1), sizeof *taken);
        if (!sticks || !taken)
            break;
        lock.thread = PyEval_SaveThread();
        status = tside_i_stock_plan(stock, cuts, cut_count, node_limit, go_on, &lock, work, work_size, sticks, taken,
                                    capacity, &count, &plan, &fault);
        PyEval_RestoreThread(lock.thread);
    }
    if (lock.stopped)
        ; /* what was raised stands */
    else if (!work || !sticks || !taken)
        PyErr_NoMemory();
    else if (status != TSIDE_OK)
        raise_fault(state, &fault, -1);
    else
        answer = Py_BuildValue("NNN", structure_copied(state, TSIDE_KIND_CUT_PLAN, &plan),
                               tuple_of(state, TSIDE_KIND_STICK, sticks, sizeof *sticks, count),
                               taken_of(taken, count, cut_count));
    PyMem_Free(sticks);
    PyMem_Free(taken);
    PyMem_Free(work);
    PyMem_Free(cuts);
    return answer;
}

#endif
