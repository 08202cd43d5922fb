/* SPDX-License-Identifier: MIT */
/* Structures as Python reads them: an attribute a field, made by the field table. */
#ifndef CORE_READ_H
#define CORE_READ_H

#include <stddef.h>

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

#endif
