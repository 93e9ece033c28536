// SPDX-License-Identifier: GPL-3.0-or-later
// Part of the window tests under the thread sanitizer only. Debian's Qt is built without it, so
// that it cannot see that a pool's queue and a posted event put what was written before ahead of
// what is read after. Instead of suppressing all that goes through Qt, the four functions by which
// the program hands work from thread to thread are wrapped here and say so.
#include <QMetaObject>
#include <QThreadPool>

#include <functional>

#include <dlfcn.h>

extern "C" {
void __tsan_acquire(void* address);
void __tsan_release(void* address);
}

namespace {

template<class Function>
Function* qtOwn(const char* mangled) {
    return reinterpret_cast<Function*>(dlsym(RTLD_NEXT, mangled));
}

// Work for a pool; so small and plain that what is read of it before the handover is told was
// written by Qt alone.
struct Handed {
    QThreadPool* pool;
    std::function<void()>* work;
    __attribute__((no_sanitize("thread"))) void operator()() const { run(pool, work); }
    __attribute__((noinline)) static void run(QThreadPool* pool, std::function<void()>* work) {
        __tsan_acquire(pool);
        (*work)();
        *work = nullptr; // what it holds goes before the end is told
        __tsan_release(pool);
        delete work;
    }
};

struct HandedSlot : QtPrivate::QSlotObjectBase {
    explicit HandedSlot(QtPrivate::QSlotObjectBase* own)
        : QSlotObjectBase(&HandedSlot::act)
        , slot(own) {
        __tsan_release(this);
    }
    static void act(int which, QSlotObjectBase* base, QObject* receiver, void** arguments, bool*) {
        __tsan_acquire(base);
        auto* self = static_cast<HandedSlot*>(base);
        if (which == Call) self->slot->call(receiver, arguments);
        if (which != Destroy) return;
        self->slot->destroyIfLastRef();
        delete self;
    }
    QtPrivate::QSlotObjectBase* slot;
};

} // namespace

void QThreadPool::start(std::function<void()> work, int priority) {
    static const auto own = qtOwn<void(QThreadPool*, std::function<void()>, int)>(
        "_ZN11QThreadPool5startESt8functionIFvvEEi");
    // Where the pool is cleared before its turn, it is never deleted: no leak is looked for here.
    const Handed handed{this, new std::function<void()>(std::move(work))};
    __tsan_release(this);
    own(this, handed, priority);
}

void QThreadPool::clear() {
    static const auto own = qtOwn<void(QThreadPool*)>("_ZN11QThreadPool5clearEv");
    own(this);
    __tsan_acquire(this);
}

bool QThreadPool::waitForDone(int milliseconds) {
    static const auto own = qtOwn<bool(QThreadPool*, int)>("_ZN11QThreadPool11waitForDoneEi");
    const bool done = own(this, milliseconds);
    __tsan_acquire(this);
    return done;
}

bool QMetaObject::invokeMethodImpl(QObject* object, QtPrivate::QSlotObjectBase* slot,
                                   Qt::ConnectionType type, void* result) {
    static const auto own =
        qtOwn<bool(QObject*, QtPrivate::QSlotObjectBase*, Qt::ConnectionType, void*)>(
            "_ZN11QMetaObject16invokeMethodImplEP7QObjectPN9QtPr"
            "ivate15QSlotObjectBaseEN2Qt14ConnectionTypeEPv");
    return own(object, new HandedSlot(slot), type, result);
}
