/* SPDX-License-Identifier: MIT */
/*
 * The extension module: the functions that SWIG wrapped, in a module that each interpreter has to itself. SWIG's own
 * way of making one shares it among all.
 */
#define PyInit__core swig_init
#include "core_wrap.c"
#undef PyInit__core

static int visit_state(PyObject *module, visitproc visit, void *arg)
{
    module_state *state = PyModule_GetState(module);
    if (!state)
        return 0;
    Py_VISIT(state->error_class);
    Py_VISIT(state->maker);
    Py_VISIT(state->base_type);
    Py_VISIT(state->kept);
    for (int kind = 0; kind < KINDS; kind++) {
        Py_VISIT(state->of[kind].class);
        Py_VISIT(state->of[kind].usual);
        Py_VISIT(state->of[kind].names);
    }
    return 0;
}

static int clear_state(PyObject *module)
{
    module_state *state = PyModule_GetState(module);
    if (!state)
        return 0;
    Py_CLEAR(state->error_class);
    Py_CLEAR(state->maker);
    Py_CLEAR(state->base_type);
    Py_CLEAR(state->kept);
    for (int kind = 0; kind < KINDS; kind++) {
        Py_CLEAR(state->of[kind].class);
        Py_CLEAR(state->of[kind].usual);
        Py_CLEAR(state->of[kind].names);
    }
    return 0;
}

static void free_state(void *module)
{
    clear_state(module);
}

static int begin(PyObject *module)
{
    module_state *state = PyModule_GetState(module);
    state->kept = PyList_New(0);
    return state->kept ? 0 : -1;
}

static PyModuleDef_Slot slots[] = {
    {Py_mod_exec, (void *)begin},
#ifdef Py_mod_multiple_interpreters
    {Py_mod_multiple_interpreters, Py_MOD_PER_INTERPRETER_GIL_SUPPORTED},
#endif
    {0, NULL},
};

static struct PyModuleDef definition = {
    PyModuleDef_HEAD_INIT,
    "_core",
    NULL,
    sizeof(module_state) + KINDS * sizeof(kind_state),
    SwigMethods,
    slots,
    visit_state,
    clear_state,
    free_state,
};

PyMODINIT_FUNC PyInit__core(void);

PyMODINIT_FUNC PyInit__core(void)
{
    return PyModuleDef_Init(&definition);
}
