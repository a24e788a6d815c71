"""Write compiled functions out in C: the few forms of Python that the kernel is written in.

Every function becomes a static one of the same statements in the same order; records become
structs, arrays a pointer with its lengths.  What the kernel says in another form stops here with a
message, so that the twin is never another loop than the kernel.
"""

import ast
import inspect
import textwrap
from collections.abc import Callable
from typing import Any

Types = dict[str, str]

RECORDS: dict[str, dict[str, str]] = {}
"""Fields of each record and their types in C."""
_SQUARE = {"matrix": "Grid2"}
"""Arguments that are tables; others that are arrays are rows."""
_CALLS = {"min": "least", "max": "most", "abs": "fabs", "int": "(long)", "float": "(double)"}
_SIGNS = {
    ast.Add: "+",
    ast.Sub: "-",
    ast.Mult: "*",
    ast.Div: "/",
    ast.FloorDiv: "/",
    ast.Mod: "%",
    ast.Lt: "<",
    ast.LtE: "<=",
    ast.Gt: ">",
    ast.GtE: ">=",
    ast.Eq: "==",
    ast.NotEq: "!=",
}


class _Unannotated(ast.NodeTransformer):
    """Take the type from an assignment: what is assigned says it."""

    def visit_AnnAssign(self, node: ast.AnnAssign) -> ast.AST:  # the library's name
        assert node.value is not None
        plain = ast.Assign(targets=[node.target], value=node.value)
        return ast.copy_location(plain, node)


class Written:
    """One function, as C."""

    def __init__(self, function: Callable[..., Any]) -> None:
        self.scope = {**function.__globals__, **inspect.getclosurevars(function).nonlocals}
        self.calls: list[Callable[..., Any]] = []
        self.made = 0
        source = textwrap.dedent(inspect.getsource(function))
        tree = _Unannotated().visit(ast.parse(source)).body[0]
        assert isinstance(tree, ast.FunctionDef)
        self.tree = tree
        self.arguments = {each.arg: self._argument(each) for each in tree.args.args}
        self.types: Types = dict(self.arguments)
        for _ in range(4):
            self._infer()
        self.result = self._result()

    def _argument(self, each: ast.arg) -> str:
        said = ast.unparse(each.annotation) if each.annotation else ""
        known = {"float": "double", "int": "long", "bool": "long", "Places": "Places1"}
        known["Grid"] = _SQUARE.get(each.arg, "Grid1")
        return known.get(said, said)

    def _result(self) -> str:
        said = ast.unparse(self.tree.returns) if self.tree.returns else "None"
        if said.startswith("tuple"):
            return f"Values{said.count('float')}"
        return {"None": "void", "float": "double", "int": "long"}[said]

    # Types of what is assigned.

    def _infer(self) -> None:
        found: dict[str, set[str]] = {}
        for node in ast.walk(self.tree):
            if isinstance(node, ast.For) and isinstance(node.target, ast.Name):
                found.setdefault(node.target.id, set()).add("long")
            elif isinstance(node, ast.Assign):
                for name, kind in self._assigned(node.targets[0], node.value):
                    found.setdefault(name, set()).add(kind)
            elif isinstance(node, ast.AugAssign) and isinstance(node.target, ast.Name):
                found.setdefault(node.target.id, set()).add(self.kind(node.value))
        for name, kinds in found.items():
            if name not in self.arguments:
                kinds.discard("")
                self.types[name] = kinds.pop() if len(kinds) == 1 else "double"

    def _assigned(self, target: ast.expr, value: ast.expr) -> list[tuple[str, str]]:
        if isinstance(target, ast.Name):
            return [(target.id, self.kind(value))]
        if isinstance(target, ast.Tuple):
            if isinstance(value, ast.Call):
                return [(each.id, "double") for each in target.elts if isinstance(each, ast.Name)]
            pairs = zip(target.elts, self._parts(value), strict=True)
            return [found for one, other in pairs for found in self._assigned(one, other)]
        return []

    def _parts(self, value: ast.expr) -> list[ast.expr]:
        if isinstance(value, ast.Tuple):
            return value.elts
        assert isinstance(value, ast.IfExp), ast.unparse(value)
        both = zip(self._parts(value.body), self._parts(value.orelse), strict=True)
        return [ast.IfExp(test=value.test, body=one, orelse=other) for one, other in both]

    def kind(self, node: ast.expr) -> str:  # noqa: C901, PLR0911, PLR0912
        """Return the type of an expression in C."""
        match node:
            case ast.Constant(value=bool() | int()):
                return "long"
            case ast.Constant():
                return "double"
            case ast.Name(id=name):
                if name in self.types:
                    return self.types[name]
                known = self.scope.get(name)
                return {int: "long", float: "double"}.get(type(known), "")
            case ast.Attribute(attr="shape"):
                return "shape"
            case ast.Attribute(value=owner, attr=field):
                record = self.kind(owner) if not self._module(owner) else ""
                if record in RECORDS:
                    return RECORDS[record][field]
                return "long" if isinstance(self._constant(node), int) else "double"
            case ast.Subscript(value=owner, slice=at):
                held = self.kind(owner)
                if held == "shape":
                    return "long"
                if not held:
                    return ""
                left = int(held[-1]) - (len(at.elts) if isinstance(at, ast.Tuple) else 1)
                inner = "long" if held.startswith("Places") else "double"
                return f"{held[:-1]}{left}" if left else inner
            case ast.Compare() | ast.BoolOp():
                return "long"
            case ast.UnaryOp(op=op, operand=operand):
                return "long" if isinstance(op, ast.Not) else self.kind(operand)
            case ast.BinOp(left=one, op=op, right=other):
                kinds = {self.kind(one), self.kind(other)} - {""}
                return "long" if kinds == {"long"} and not isinstance(op, ast.Div) else "double"
            case ast.IfExp(body=one, orelse=other):
                return self.kind(one) if self.kind(one) == self.kind(other) else "double"
            case ast.Call(func=ast.Name(id="int" | "len")):
                return "long"
            case ast.Call(func=ast.Name(id="min" | "max"), args=args):
                return "long" if {self.kind(each) for each in args} == {"long"} else "double"
            case ast.Call():
                return "double"
        raise SystemExit(f"the twin cannot write {ast.unparse(node)}")

    def _module(self, node: ast.expr) -> bool:
        return isinstance(node, ast.Name) and inspect.ismodule(self.scope.get(node.id))

    def _constant(self, node: ast.Attribute) -> Any:
        return getattr(self.scope[ast.unparse(node.value)], node.attr)

    # Expressions.

    def value(self, node: ast.expr) -> str:  # noqa: C901, PLR0911
        """Return an expression in C."""
        match node:
            case ast.Constant(value=known):
                return repr(int(known) if isinstance(known, bool) else known)
            case ast.Name(id=name):
                return f"v_{name}" if name in self.types else repr(self.scope[name])
            case ast.Attribute(value=owner, attr=field):
                if self._module(owner):
                    return repr(self._constant(node))
                return f"{self.value(owner)}.{field}"
            case ast.Subscript(value=ast.Attribute(value=owner, attr="shape"), slice=at):
                return f"{self.value(owner)}.n{ast.unparse(at)}"
            case ast.Subscript(value=owner, slice=at):
                return self._element(owner, at.elts if isinstance(at, ast.Tuple) else [at])
            case ast.Compare(left=left, ops=signs, comparators=others):
                ends = [left, *others]
                return " && ".join(
                    f"({self.value(one)} {_SIGNS[type(sign)]} {self.value(other)})"
                    for one, sign, other in zip(ends, signs, others, strict=False)
                )
            case ast.BoolOp(op=op, values=values):
                joint = " && " if isinstance(op, ast.And) else " || "
                return "(" + joint.join(f"({self.value(each)})" for each in values) + ")"
            case ast.UnaryOp(op=op, operand=operand):
                return f"({'!' if isinstance(op, ast.Not) else '-'}({self.value(operand)}))"
            case ast.BinOp(left=one, op=op, right=other):
                first = "(double)" if isinstance(op, ast.Div) else ""
                return f"({first}{self.value(one)} {_SIGNS[type(op)]} {self.value(other)})"
            case ast.IfExp(test=test, body=one, orelse=other):
                return f"(({self.value(test)}) ? {self.value(one)} : {self.value(other)})"
            case ast.Call():
                return self._call(node)
        raise SystemExit(f"the twin cannot write {ast.unparse(node)}")

    def _element(self, owner: ast.expr, at: list[ast.expr]) -> str:
        held, base = self.kind(owner), self.value(owner)
        dimensions = int(held[-1])
        flat = f"({self.value(at[0])})"
        for place in range(1, dimensions):
            index = f"({self.value(at[place])})" if place < len(at) else "0"
            flat = f"({flat} * {base}.n{place} + {index})"
        if len(at) == dimensions:
            return f"{base}.p[{flat}]"
        lengths = ", ".join(f"{base}.n{place}" for place in range(len(at), dimensions))
        return f"(({held[:-1]}{dimensions - len(at)}){{{base}.p + {flat}, {lengths}}})"

    def _call(self, node: ast.Call) -> str:
        said = ast.unparse(node.func)
        arguments = [self.value(each) for each in node.args]
        if said == "len":
            return f"{arguments[0]}.n0"
        if said == "math.sqrt":
            return f"sqrt({arguments[0]})"
        if said in _CALLS and said not in self.types:
            whole = "(long)" if self.kind(node) == "long" else ""
            return f"{whole}{_CALLS[said]}({', '.join(arguments)})"
        called = self.scope[said].py_func
        if called not in self.calls:
            self.calls.append(called)
        return f"{name_of(called)}({', '.join(arguments)})"

    # Statements.

    def text(self) -> str:
        """Return the function in C."""
        arguments = ", ".join(f"{kind} v_{name}" for name, kind in self.arguments.items())
        local = [
            f"  {kind} v_{name};"
            for name, kind in self.types.items()
            if name not in self.arguments
        ]
        body = [line for each in self.tree.body for line in self._statement(each)]
        head = f"static inline {self.result} {name_of_tree(self)}({arguments}) {{"
        return "\n".join([head, *local, *body, "}"])

    def _block(self, statements: list[ast.stmt]) -> list[str]:
        return [line for each in statements for line in self._statement(each)]

    def _statement(self, node: ast.stmt) -> list[str]:  # noqa: PLR0911
        match node:
            case ast.Expr(value=ast.Constant()):
                return []
            case ast.Expr(value=value):
                return [f"{self.value(value)};"]
            case ast.Break():
                return ["break;"]
            case ast.Assign(targets=[target], value=value):
                return self._assign(target, value)
            case ast.AugAssign(target=target, op=op, value=value):
                return [f"{self.value(target)} {_SIGNS[type(op)]}= {self.value(value)};"]
            case ast.If(test=test, body=body, orelse=orelse):
                other = ["} else {", *self._block(orelse)] if orelse else []
                return [f"if ({self.value(test)}) {{", *self._block(body), *other, "}"]
            case ast.For(target=ast.Name(id=name), iter=ast.Call(args=args), body=body):
                return [
                    self._loop(name, [self.value(each) for each in args]),
                    *self._block(body),
                    "}",
                ]
            case ast.Return(value=ast.Tuple(elts=values)):
                every = ", ".join(self.value(each) for each in values)
                return [f"return ({self.result}){{{{{every}}}}};"]
            case ast.Return(value=value) if value is not None:
                return [f"return {self.value(value)};"]
        raise SystemExit(f"the twin cannot write {ast.unparse(node)}")

    def _loop(self, name: str, args: list[str]) -> str:
        first, last = ("0", args[0]) if len(args) == 1 else (args[0], args[1])
        if len(args) > 2:  # noqa: PLR2004
            return f"for (v_{name} = {first}; v_{name} > {last}; v_{name}--) {{"
        return f"for (v_{name} = {first}; v_{name} < {last}; v_{name}++) {{"

    def _assign(self, target: ast.expr, value: ast.expr) -> list[str]:
        if not isinstance(target, ast.Tuple):
            return [f"{self.value(target)} = {self.value(value)};"]
        self.made += 1
        if isinstance(value, ast.Call):
            held = f"t{self.made}"
            kind = f"Values{len(target.elts)}"
            sets = [
                f"{self.value(each)} = {held}.v[{place}];"
                for place, each in enumerate(target.elts)
                if not (isinstance(each, ast.Name) and each.id == "_")
            ]
            return [f"{kind} {held} = {self.value(value)};", *sets]
        lines, sets = [], []
        for place, (one, other) in enumerate(zip(target.elts, self._parts(value), strict=True)):
            held = f"t{self.made}_{place}"
            lines.append(f"{self.kind(other)} {held} = {self.value(other)};")
            sets.append(f"{self.value(one)} = {held};")
        return [*lines, *sets]


def name_of(function: Callable[..., Any]) -> str:
    """Return the name of a function in C."""
    return f"{function.__module__.rsplit('.', 1)[-1]}_{function.__name__}"


def name_of_tree(written: Written) -> str:
    """Return the name of a written function in C."""
    return f"{written.scope['__name__'].rsplit('.', 1)[-1]}_{written.tree.name}"


def written_out(function: Callable[..., Any]) -> str:
    """Return a function and all that it calls, those first."""
    done: dict[str, str] = {}

    def add(each: Callable[..., Any]) -> None:
        if name_of(each) in done:
            return
        made = Written(each)
        text = made.text()
        for called in made.calls:
            add(called)
        done[name_of(each)] = text

    add(function)
    return "\n\n".join(done.values())
