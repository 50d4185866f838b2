// SPDX-License-Identifier: GPL-3.0-or-later
// Empty: only for the headers that all tests share, which tests/CMakeLists.txt has precompiled with it.
