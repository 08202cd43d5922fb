/* SPDX-License-Identifier: MIT */
/*
 * Between Python's objects and C's numbers, texts and structures. Only what the stable interface of Python has is used.
 */
#ifndef CORE_VALUES_H
#define CORE_VALUES_H

#include <limits.h>
#include <stdarg.h>
#include <string.h>

typedef struct c_structure {
    const char *name; /* in C: tside_roll */
    size_t size;
    const tside_field *rows; /* where the library has no table */
    int count;
} c_structure;

/* What Python has for a structure: nothing until it is first asked for. */
typedef struct kind_state {
    PyObject *class, *usual; /* its usual values */
    PyObject *names;         /* a dictionary from a field's name in Python to its row */
    PyObject *maker; /* the name of the function of the library that makes it, where nobody does by hand, or NULL */
    int depends;     /* 1 where a usual value depends on a choice */
} kind_state;

/*
 * What the module knows of Python's classes, set at import. Interpreters of one process share nothing: each has its own
 * module, and this is its state.
 */
typedef struct module_state {
    PyObject *error_class;
    PyObject *maker; /* the module of Python that makes classes, and raises the error for a name that no field has */
    PyTypeObject *base_type; /* of all structures */
    PyObject *kept;          /* what the classes' attributes need, a list */
    kind_state of[];         /* each kind */
} module_state;

/*
 * A structure of Python's holds one of C's. Its class is derived, in Python, from one made here; what kind it is, and
 * of which module, stands before what C knows, which is aligned for any number.
 */
typedef struct holder {
    PyObject_VAR_HEAD module_state *state;
    Py_ssize_t kind;
    double held[];
} holder;

/* The state of the module whose function is called: what SWIG calls self. */
#define STATE ((module_state *)PyModule_GetState(self))

static PyObject *Py_NewRef_(PyObject *object)
{
    Py_INCREF(object);
    return object;
}

static const c_structure *structure_of(int kind);
static int kind_named(const char *name);

static const tside_field *rows_of(int kind, int *count)
{
    const c_structure *one = structure_of(kind);
    if (!one)
        return *count = 0, NULL;
    if (!one->rows)
        return tside_fields((tside_kind)kind, count);
    *count = one->count;
    return one->rows;
}

/* --- refusing --- */

/* C cuts what has no room by bytes, so that half a character may be left. */
static PyObject *text_of(const char *text)
{
    return PyUnicode_DecodeUTF8(text, (Py_ssize_t)strlen(text), "replace");
}

static PyObject *text_or_none(const char *text)
{
    return text && *text ? text_of(text) : Py_NewRef_(Py_None);
}

/*
 * Raises tunnelside.Error for a fault; row: of a batch, or -1. A value and its bound are there where the fault relates
 * them.
 */
static void raise_fault(module_state *state, const tside_fault *fault, int row)
{
    char text[1024];
    PyObject *error;
    const int related = fault->relation != TSIDE_NO_RELATION, finite = fault->relation != TSIDE_NOT_FINITE;
    tside_fault_text(fault, text, sizeof text);
    error = PyObject_CallFunction(
        state->error_class, "NiiNNNNiidddiiid", text_of(text), (int)fault->status, (int)fault->relation,
        text_or_none(fault->field), text_or_none(fault->other), text_or_none(fault->unit), text_or_none(fault->reason),
        fault->index, row, fault->value, fault->bound, fault->gap, related, finite, fault->remedy_given, fault->remedy);
    if (error) {
        PyErr_SetObject(state->error_class, error);
        Py_DECREF(error);
    }
}

/* Gives the error that is raised what was answered all the same. */
static void tell_answers(PyObject *answers)
{
    PyObject *type, *error, *trace;
    PyErr_Fetch(&type, &error, &trace);
    PyErr_NormalizeException(&type, &error, &trace);
    if (error && answers && PyObject_SetAttrString(error, "answers", answers) < 0)
        PyErr_Clear();
    PyErr_Restore(type, error, trace);
}

static int refuse(module_state *state, tside_status status, tside_relation relation, const char *field,
                  const char *other, const char *reason, double value, double bound)
{
    tside_fault fault = {status, relation, "", "", "1", reason, -1, value, bound, 0};
    strncpy(fault.field, field, sizeof fault.field - 1);
    strncpy(fault.other, other, sizeof fault.other - 1);
    raise_fault(state, &fault, -1);
    return 0;
}

static int wrong_type(const char *name, const char *wanted, PyObject *object)
{
    PyErr_Format(PyExc_TypeError, "%s: %s, not %R", name, wanted, (PyObject *)Py_TYPE(object));
    return 0;
}

/* --- numbers and texts --- */

static int text_from(PyObject *object, const char *name, const char **text)
{
    Py_ssize_t length;
    if (!PyUnicode_Check(object))
        return wrong_type(name, "a text", object);
    *text = PyUnicode_AsUTF8AndSize(object, &length);
    if (*text && strlen(*text) != (size_t)length) {
        PyErr_Format(PyExc_ValueError, "%s: a text with a zero character", name);
        return 0;
    }
    return *text != NULL;
}

/* Whether an object has units of its own, which would be lost in silence. */
static int carries_units(PyObject *object)
{
    return !PyFloat_CheckExact(object) && !PyLong_CheckExact(object) &&
           (PyObject_HasAttrString(object, "units") || PyObject_HasAttrString(object, "unit"));
}

/*
 * A number, or a text with its unit, of an argument or, where row is not NULL, of a field. A table made for Python
 * alone may lack the unit.
 */
static int typed_from(module_state *state, PyObject *object, const tside_field *row, const char *unit, const char *name,
                      double *number)
{
    if (PyUnicode_Check(object)) {
        tside_fault fault;
        const char *text;
        if (!text_from(object, name, &text))
            return 0;
        if ((row && *unit ? tside_field_read(row, text, number, &fault)
                          : tside_quantity_read(text, *unit ? unit : "1", number, &fault)) == TSIDE_OK)
            return 1;
        memset(fault.field, 0, sizeof fault.field);
        strncpy(fault.field, name, sizeof fault.field - 1);
        raise_fault(state, &fault, -1);
        return 0;
    }
    if (carries_units(object))
        return wrong_type(name, "a number, or a text with its unit, and nothing with units of its own", object);
    *number = PyFloat_AsDouble(object);
    if (*number == -1 && PyErr_Occurred())
        return PyErr_ExceptionMatches(PyExc_TypeError) ? wrong_type(name, "a number, or a text with its unit", object)
                                                       : 0;
    return 1;
}

static int number_from(module_state *state, PyObject *object, const char *unit, const char *name, double *number)
{
    return typed_from(state, object, NULL, unit, name, number);
}

static int whole_from(PyObject *object, const char *name, int *whole)
{
    PyObject *index = PyNumber_Index(object);
    long value;
    if (!index)
        return wrong_type(name, "a whole number", object);
    value = PyLong_AsLong(index);
    Py_DECREF(index);
    if (value == -1 && PyErr_Occurred())
        return 0;
    if (value < INT_MIN || value > INT_MAX) {
        PyErr_Format(PyExc_OverflowError, "%s: %ld is too large", name, value);
        return 0;
    }
    *whole = (int)value;
    return 1;
}

/* --- structures --- */

static void *structure_at(PyObject *object)
{
    return ((holder *)(void *)object)->held;
}

/*
 * Calls a function of the module that makes classes. It is found in the module's dictionary: an interpreter keeps for a
 * while every text by which an attribute was sought, and this one is made anew each time.
 */
static PyObject *ask_maker(const module_state *state, const char *function, const char *format, ...)
{
    PyObject *found = PyDict_GetItemString(PyModule_GetDict(state->maker), function), *arguments, *answer;
    va_list list;
    va_start(list, format);
    arguments = Py_VaBuildValue(format, list);
    va_end(list);
    if (!found && !PyErr_Occurred())
        PyErr_Format(PyExc_SystemError, "%s is missing", function);
    answer = found && arguments ? PyObject_CallObject(found, arguments) : NULL;
    Py_XDECREF(arguments);
    return answer;
}

/* What Python has for a kind, its class made if it was not; NULL where that failed. */
static const kind_state *kind_of(module_state *state, int kind)
{
    if (!state->of[kind].class) {
        PyObject *class = ask_maker(state, "class_of", "(i)", kind);
        Py_XDECREF(class); /* it has settled, and is kept */
        if (!class)
            return NULL;
    }
    return state->of + kind;
}

/* A structure of all zeros. */
static PyObject *structure_new(module_state *state, int kind)
{
    const kind_state *of = kind_of(state, kind);
    PyObject *object = of ? PyType_GenericAlloc((PyTypeObject *)(void *)of->class, (Py_ssize_t)structure_of(kind)->size)
                          : NULL;
    if (object) {
        ((holder *)(void *)object)->state = state;
        ((holder *)(void *)object)->kind = kind;
    }
    return object;
}

static PyObject *structure_copied(module_state *state, int kind, const void *from)
{
    PyObject *object = structure_new(state, kind);
    if (object)
        memcpy(structure_at(object), from, structure_of(kind)->size);
    return object;
}

/* The kind of a structure, or -1 for any other object. */
static int kind_in(const module_state *state, PyObject *object)
{
    return PyType_IsSubtype(Py_TYPE(object), state->base_type) ? (int)((holder *)(void *)object)->kind : -1;
}

/* The C structure in a Python one. */
static int structure_from(module_state *state, PyObject *object, int kind, const char *name, const void **at)
{
    if (kind_in(state, object) != kind) {
        PyErr_Format(PyExc_TypeError, "%s: a structure of %s, not %R", name, structure_of(kind)->name,
                     (PyObject *)Py_TYPE(object));
        return 0;
    }
    *at = structure_at(object);
    return 1;
}

/* All elements of a sequence of structures, one behind the other; the caller frees them. */
static inline int list_from(module_state *state, PyObject *object, int kind, size_t size, const char *name, void **all,
                            int *count)
{
    PyObject *list = PySequence_List(object);
    const Py_ssize_t length = list ? PyList_Size(list) : 0;
    int done = 0;
    if (!list)
        return 0;
    *all = length < INT_MAX ? PyMem_Calloc((size_t)length + 1, size) : NULL;
    if (!*all)
        PyErr_NoMemory();
    for (; *all && done < (int)length; done++) {
        const void *at;
        if (!structure_from(state, PyList_GetItem(list, done), kind, name, &at))
            break;
        memcpy((char *)*all + (size_t)done * size, at, size);
    }
    *count = (int)length;
    Py_DECREF(list);
    return *all && done == *count;
}

static inline int numbers_from(module_state *state, PyObject *object, const char *unit, const char *name, double **all,
                               int *count)
{
    PyObject *list = PySequence_List(object);
    const Py_ssize_t length = list ? PyList_Size(list) : 0;
    int done = 0;
    if (!list)
        return 0;
    *all = length < INT_MAX ? PyMem_Calloc((size_t)length + 1, sizeof **all) : NULL;
    if (!*all)
        PyErr_NoMemory();
    while (*all && done < (int)length && number_from(state, PyList_GetItem(list, done), unit, name, *all + done))
        done++;
    *count = (int)length;
    Py_DECREF(list);
    return *all && done == *count;
}

static PyObject *tuple_of(module_state *state, int kind, const void *all, size_t size, int count)
{
    PyObject *tuple = PyTuple_New(count);
    for (int i = 0; tuple && i < count; i++) {
        PyObject *one = structure_copied(state, kind, (const char *)all + (size_t)i * size);
        if (!one) {
            Py_DECREF(tuple);
            return NULL;
        }
        PyTuple_SetItem(tuple, i, one);
    }
    return tuple;
}

/* Whether a call that found too little room is to be made once more: with room for all. */
static int again(tside_status status, void **all, size_t size, int *capacity, const int *count)
{
    void *more;
    if (status != TSIDE_TOO_SMALL || *count <= *capacity)
        return 0;
    more = PyMem_Calloc((size_t)*count, size);
    if (!more)
        return 0;
    PyMem_Free(*all);
    *all = more;
    *capacity = *count;
    return 1;
}

/* Room for most texts, empty. */
static int room_for_text(char **text, size_t *size)
{
    *size = 256;
    *text = (char *)PyMem_Calloc(*size, 1);
    if (!*text)
        PyErr_NoMemory();
    return *text != NULL;
}

/* Whether a call that wrote a text without its end, or none, is to be made once more: with room for all of it. */
static int more_room(char **text, size_t *size, size_t needed)
{
    char *more = needed < *size ? NULL : (char *)PyMem_Calloc(needed + 1, 1);
    if (!more)
        return 0;
    PyMem_Free(*text);
    *text = more;
    *size = needed + 1;
    return 1;
}

/*
 * The results of a call, one after the other: gathered in a list, and handed on as a tuple, or alone where there is but
 * one. Takes over both.
 */
static PyObject *gather(PyObject *results, PyObject *one)
{
    if (one && !results)
        results = PyList_New(0);
    if (!one || !results || PyList_Append(results, one) < 0)
        Py_CLEAR(results);
    Py_XDECREF(one);
    return results;
}

static PyObject *gathered(PyObject *results)
{
    PyObject *answer;
    if (!results)
        return Py_NewRef_(Py_None);
    answer = PyList_Size(results) == 1 ? Py_NewRef_(PyList_GetItem(results, 0)) : PyList_AsTuple(results);
    Py_DECREF(results);
    return answer;
}

#endif
