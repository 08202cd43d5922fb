/* SPDX-License-Identifier: MIT */
/* What SWIG wraps: functions.i, made from the headers by generate.py, and the few functions of another shape below. Numbers, texts, tuples and structures pass. */
%module _core

%begin %{
#define PY_SSIZE_T_CLEAN
#define SWIGEXPORT static inline /* core_module.c makes the module */
%}

%{
#include <math.h>
#include <tunnelside.h>
#include "core_values.h"
%}

/* --- typemaps: what functions.i names --- */

/* Results gather in $result. The fault comes last and settles whether there are any. */
%typemap(out) tside_status { (void)$1; $result = NULL; }
%typemap(in, numinputs=0) tside_fault *fault (tside_fault fault) { memset(&fault, 0, sizeof fault); $1 = &fault; }
%define FAULT
%typemap(argout) tside_fault *fault {
    if (result != TSIDE_OK) {
        Py_XDECREF($result);
        raise_fault(STATE, $1, -1);
        SWIG_fail;
    }
    $result = gathered($result);
}
%enddef
FAULT

/* Where something is written although nothing is within reach: the error has it. */
%define FAULT_WITH_ANSWERS
%typemap(argout) tside_fault *fault {
    $result = gathered($result);
    if (result != TSIDE_OK) {
        raise_fault(STATE, $1, -1);
        if (result == TSIDE_OUT_OF_REACH)
            tell_answers($result);
        Py_XDECREF($result);
        SWIG_fail;
    }
}
%enddef

%define STRUCTURE(TYPE, KIND)
%typemap(in, numinputs=0) TYPE * (PyObject *made = NULL) {
    made = structure_new(STATE, KIND);
    if (!made)
        SWIG_fail;
    $1 = (TYPE *)structure_at(made);
}
%typemap(argout) TYPE * { $result = gather($result, made$argnum); made$argnum = NULL; if (!$result) SWIG_fail; }
%typemap(freearg) TYPE * { Py_XDECREF(made$argnum); }
%typemap(out) TYPE { $result = structure_copied(STATE, KIND, &$1); }
%typemap(in) const TYPE * { if (!structure_from(STATE, $input, KIND, "$1_name", (const void **)&$1)) SWIG_fail; }
%typemap(argout) const TYPE * "" /* a typemap without const would serve for it too */
%typemap(freearg) const TYPE * ""
%enddef

%define STRUCTURE_IN(TYPE, NAME)
%typemap(in) const TYPE *NAME = const TYPE *;
%typemap(argout) const TYPE *NAME ""
%typemap(freearg) const TYPE *NAME = const TYPE *;
%enddef

%define STRUCTURE_IN_OR_NONE(TYPE, NAME)
%typemap(in) const TYPE *NAME { if ($input != Py_None && !structure_from(STATE, $input, kind_named(#TYPE), "$1_name", (const void **)&$1)) SWIG_fail; }
%typemap(argout) const TYPE *NAME ""
%typemap(freearg) const TYPE *NAME ""
%enddef

%define LIST_IN(TYPE, NAME, COUNT)
%typemap(in) (const TYPE *NAME, int COUNT) (void *all = NULL) {
    if (!list_from(STATE, $input, kind_named(#TYPE), sizeof(TYPE), #NAME, &all, &$2))
        SWIG_fail;
    $1 = (TYPE *)all;
}
%typemap(freearg) (const TYPE *NAME, int COUNT) { PyMem_Free(all$argnum); }
%enddef

%define NUMBERS_IN(NAME, COUNT, UNIT)
%typemap(in) (const double *NAME, int COUNT) (double *all = NULL) {
    if (!numbers_from(STATE, $input, UNIT, #NAME, &all, &$2))
        SWIG_fail;
    $1 = all;
}
%typemap(freearg) (const double *NAME, int COUNT) { PyMem_Free(all$argnum); }
%enddef

/* Where more comes than there is room for, again() makes room, and the call is made once more. */
%define LIST_OUT(TYPE, NAME, CAPACITY, COUNT)
%typemap(in, numinputs=0) (TYPE *NAME, int CAPACITY, int *COUNT) (int count = 0) {
    $2 = 64;
    $3 = &count;
    $1 = (TYPE *)PyMem_Calloc((size_t)$2, sizeof(TYPE));
    if (!$1) {
        PyErr_NoMemory();
        SWIG_fail;
    }
}
%typemap(argout) (TYPE *NAME, int CAPACITY, int *COUNT) { $result = gather($result, result == TSIDE_OK ? tuple_of(STATE, kind_named(#TYPE), $1, sizeof(TYPE), count$argnum) : Py_NewRef_(Py_None)); if (!$result) SWIG_fail; }
%typemap(freearg) (TYPE *NAME, int CAPACITY, int *COUNT) { PyMem_Free($1); }
%enddef

%define LIST_FIXED(TYPE, NAME, COUNT)
%typemap(in, numinputs=0) TYPE *NAME (TYPE all[COUNT]) { memset(all, 0, sizeof all); $1 = all; }
%typemap(argout) TYPE *NAME { $result = gather($result, tuple_of(STATE, kind_named(#TYPE), $1, sizeof(TYPE), COUNT)); if (!$result) SWIG_fail; }
%typemap(freearg) TYPE *NAME ""
%enddef

/* Made once the list is known that it goes with. */
%define LIST_EACH(TYPE, NAME, COUNT)
%typemap(in, numinputs=0) TYPE *NAME ""
%typemap(check) TYPE *NAME {
    $1 = (TYPE *)PyMem_Calloc((size_t)COUNT + 1, sizeof(TYPE));
    if (!$1) {
        PyErr_NoMemory();
        SWIG_fail;
    }
}
%typemap(argout) TYPE *NAME { $result = gather($result, tuple_of(STATE, kind_named(#TYPE), $1, sizeof(TYPE), COUNT)); if (!$result) SWIG_fail; }
%typemap(freearg) TYPE *NAME { PyMem_Free($1); }
%enddef

%define NUMBER_IN(NAME, UNIT)
%typemap(in) double NAME { if (!number_from(STATE, $input, UNIT, "$1_name", &$1)) SWIG_fail; }
%enddef

%define CHOICE(TYPE)
%typemap(in) TYPE { int whole; if (!whole_from($input, "$1_name", &whole)) SWIG_fail; $1 = (TYPE)whole; }
%typemap(in, numinputs=0) TYPE * (TYPE choice) { choice = (TYPE)0; $1 = &choice; }
%typemap(argout) TYPE * { $result = gather($result, PyLong_FromLong((long)*$1)); if (!$result) SWIG_fail; }
%enddef

%typemap(in) int { if (!whole_from($input, "$1_name", &$1)) SWIG_fail; }
%typemap(in) const char * { if (!text_from($input, "$1_name", (const char **)&$1)) SWIG_fail; }
%typemap(freearg) const char * ""
%typemap(in, numinputs=0) double * (double number) { number = 0; $1 = &number; }
%typemap(argout) double * { $result = gather($result, PyFloat_FromDouble(*$1)); if (!$result) SWIG_fail; }
%typemap(in, numinputs=0) int * (int whole) { whole = 0; $1 = &whole; }
%typemap(argout) int * { $result = gather($result, PyLong_FromLong(*$1)); if (!$result) SWIG_fail; }

/* As lists: where a text needs more room than most, more_room() makes it, and the call is made once more. */
%typemap(in, numinputs=0) (char *buffer, size_t size) { if (!room_for_text(&$1, &$2)) SWIG_fail; }
%typemap(argout) (char *buffer, size_t size) { Py_XDECREF($result); $result = text_of($1); if (!$result) SWIG_fail; }
%typemap(freearg) (char *buffer, size_t size) { PyMem_Free($1); }
%typemap(in, numinputs=0) (char *buffer, size_t size, size_t *needed) (size_t needed = 0) { $3 = &needed; if (!room_for_text(&$1, &$2)) SWIG_fail; }
%typemap(argout) (char *buffer, size_t size, size_t *needed) { $result = gather($result, text_of($1)); if (!$result) SWIG_fail; }
%typemap(freearg) (char *buffer, size_t size, size_t *needed) { PyMem_Free($1); }

#define TSIDE_API
#define TSIDE_NODISCARD
%rename("%(strip:[tside_])s") "";

/*
 * A thousand drives take 50 ms, in which others go on. plan_side keeps the lock of the interpreter: it takes 25 to 50 us, less than to hand the lock over and get it back.
 * Without it two threads planned no more sides than one, and one beside a busy thread took 250 us a side in place of 140. plan_many has workers for that.
 */
%exception tside_drive_smallest {
    Py_BEGIN_ALLOW_THREADS
    $action
    Py_END_ALLOW_THREADS
}

%include "functions.i"

/* --- by hand --- */

%native(base) PyObject *core_base(PyObject *self, PyObject *args);
%native(describe) PyObject *core_describe(PyObject *self, PyObject *args);
%native(settle) PyObject *core_settle(PyObject *self, PyObject *args);
%native(kinds) PyObject *core_kinds(PyObject *self, PyObject *args);
%native(fields) PyObject *core_fields(PyObject *self, PyObject *args);
%native(field_at) PyObject *core_field_at(PyObject *self, PyObject *args);
%native(check) PyObject *core_check(PyObject *self, PyObject *args);
%native(applies) PyObject *core_applies(PyObject *self, PyObject *args);
%native(usual_by_choice) PyObject *core_usual_by_choice(PyObject *self, PyObject *args);
%native(usual_in) PyObject *core_usual_in(PyObject *self, PyObject *args);
%native(number) PyObject *core_number(PyObject *self, PyObject *args);
%native(typed) PyObject *core_typed(PyObject *self, PyObject *args);
%native(remade) PyObject *core_remade(PyObject *self, PyObject *args);
%native(trades) PyObject *core_trades(PyObject *self, PyObject *args);
%native(stock_plan) PyObject *core_stock_plan(PyObject *self, PyObject *args);
%native(roll_rows) PyObject *core_roll_rows(PyObject *self, PyObject *args);
%native(plan_rows) PyObject *core_plan_rows(PyObject *self, PyObject *args);

%{
#include "core_read.h"
#include "core_fill.h"
#include "core_tables.h"
#include "core_rows.h"
#include "core_roll.h"
#include "core_stock.h"
%}
