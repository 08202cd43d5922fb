/* SPDX-License-Identifier: MIT */
/* The cut plan, whose search lets other threads and signals through. */
#ifndef CORE_STOCK_H
#define CORE_STOCK_H

#include <time.h>

#include "cutting/stock.h"

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
